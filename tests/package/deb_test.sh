#!/bin/bash
# Makes the Debian packages and looks into them with dpkg.
# usage: deb_test.sh BUILD-FOLDER SCRATCH-FOLDER
set -e
build=$1 scratch=$2
rm -rf "$scratch"
mkdir -p "$scratch"
cpack --config "$build/CPackConfig.cmake" -G DEB -B "$scratch" > /dev/null
cd "$scratch"
program=$(echo mullion_*.deb) library=$(echo libmullion-dev_*.deb)
depends=$(dpkg-deb --field "$program" Depends)
for package in libc6 libcairo2 libpango-1.0-0 libgmime-3.0-0 coinor-libclp1 fonts-lato; do
  case "$depends" in *$package*) ;; *) echo "the program does not ask for $package: $depends"; exit 1 ;; esac
done
dpkg-deb --extract "$program" root
root/usr/bin/mullion check root/usr/share/mullion/gallery/double-mat.xml > /dev/null
root/usr/bin/mullion proof root/usr/share/mullion/gallery/double-mat.xml -o proof.pdf
dpkg-deb --contents "$library" | grep -q ./usr/include/mullion/engine/layout/layout.h
! dpkg-deb --contents "$program" | grep -q /include/
echo "the packages hold what they should"

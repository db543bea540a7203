#!/bin/bash
# Installs the build into a folder of its own, builds a program outside the tree against it, and
# measures what that program writes.
# usage: install_test.sh BUILD-FOLDER SCRATCH-FOLDER
set -e
build=$1 scratch=$2
here=$(cd "$(dirname "$0")" && pwd)
rm -rf "$scratch"
mkdir -p "$scratch"
cmake --install "$build" --prefix "$scratch/usr" > /dev/null
cp -r "$here/outside" "$scratch/outside"
cmake -S "$scratch/outside" -B "$scratch/built" -DCMAKE_PREFIX_PATH="$scratch/usr" > /dev/null
cmake --build "$scratch/built"
cd "$scratch"
# A picture of 10 in, seen to within 1/8 in of its edges, a reveal of 1/4 in, a bevel of 1/16 in and a
# border of 3 in on each side: 10 - 1/4 + 1/2 + 1/8 + 6 = 16 3/8 in.
built/one_template | grep -q "^mat 16 3/8 in x 14 3/8 in$"
pdfinfo template.pdf | grep -q "^Pages: *2$"
built/one_week usr/share/mullion/gallery/double-mat.xml 2> /dev/null | grep -q "^Chalk: 1 sheets$"
pdfinfo W-0103.pdf | grep -q "^Pages: *1$"
[ "$("$scratch/usr/bin/mullion" --version)" = "mullion $(sed -n 's/^project(mullion VERSION \([^ ]*\).*/\1/p' "$here/../../CMakeLists.txt")" ]
usr/bin/mullion template usr/share/mullion/gallery/double-mat.xml -o drawn.pdf
pdfinfo drawn.pdf | grep -q "^Pages: *2$"
# What explanations name is installed where they say.
"$scratch/usr/bin/mullion" explain --json | grep -o 'share/[a-z/._-]*[a-z]' | sort -u > named
[ -s named ]
while read -r path; do test -f "$scratch/usr/$path"; done < named
echo "the installed library and program work"

// The headers that most tests include are precompiled with this file, for all test programs: CMake
// makes none for a target whose only source skips them, as main.cpp must.

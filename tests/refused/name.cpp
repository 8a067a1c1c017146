// What may be missing is not taken for what is there.
#include <groat/base/name.hpp>

#include <string>
#include <vector>

std::vector<std::string> const pantry = {"plain flour", "butter"};
std::string const meant = groat::nearest_name("buter", pantry).value_or("nothing");

#if CASE == 1
// refused: conversion from
// refused: no viable conversion
std::string const taken_blindly = groat::nearest_name("buter", pantry);
#elif CASE == 2
// refused: unused-result
void forget() { groat::nearest_name("buter", pantry); }
#endif

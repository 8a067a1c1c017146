// Reads books and prints JSON: everything that groat::yaml and groat::json add must come along.
#include <groat/paper/json.hpp>
#include <groat/yaml/load.hpp>

#include <cstdio>

int main() { std::puts("groat::yaml and groat::json are here"); }

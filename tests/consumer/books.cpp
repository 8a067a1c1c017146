// Reads books and prints JSON: everything that groat::yaml and groat::json add must come along.
#include <groat/books/load.hpp>
#include <groat/paper/json.hpp>

#include <cstdio>

int main() { std::puts("groat::yaml and groat::json are here"); }

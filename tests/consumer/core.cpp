// The front door alone: no yaml-cpp, no JSON.
#include <groat.hpp>

#include <cstdio>

int main() {
    groat::Result<groat::Number> const cups = groat::parse_number("2 1/4");
    std::puts(cups ? groat::exact(*cups).c_str() : cups.error().what.c_str());
    return cups && groat::exact(*cups) == "9/4" ? 0 : 1;
}

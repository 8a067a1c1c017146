#include <groat/base/capital.hpp>

#include <doctest/doctest.h>

#include <string_view>
#include <utility>

using groat::capital;
using groat::capitals;

// Python 3.11's str.upper (Unicode 14) over every letter of the blocks that has a single capital.
TEST_CASE(
    "every letter of Latin-1, Latin Extended-A, Greek and Cyrillic has the capital that Unicode gives it") {
    constexpr std::pair<std::string_view, std::string_view> blocks[] = {
        {"àáâãäåæçèéêëìíîïðñòóôõöøùúûüýþÿ", "ÀÁÂÃÄÅÆÇÈÉÊËÌÍÎÏÐÑÒÓÔÕÖØÙÚÛÜÝÞŸ"},
        {"ĀāĂăĄąĆćĈĉĊċČčĎďĐđĒēĔĕĖėĘęĚěĜĝĞğĠġĢģĤĥĦħĨĩĪīĬĭĮįİıĲĳĴĵĶķĸĹĺĻļĽľĿŀŁłŃńŅņŇňŊŋŌōŎŏŐőŒœŔŕŖŗŘřŚśŜŝŞşŠšŢţŤťŦŧŨũŪūŬŭŮůŰűŲųŴŵŶŷŸŹźŻżŽž",
         "ĀĀĂĂĄĄĆĆĈĈĊĊČČĎĎĐĐĒĒĔĔĖĖĘĘĚĚĜĜĞĞĠĠĢĢĤĤĦĦĨĨĪĪĬĬĮĮİIĲĲĴĴĶĶĸĹĹĻĻĽĽĿĿŁŁŃŃŅŅŇŇŊŊŌŌŎŎŐŐŒŒŔŔŖŖŘŘŚŚŜŜŞŞŠŠŢŢŤŤŦŦŨŨŪŪŬŬŮŮŰŰŲŲŴŴŶŶŸŹŹŻŻŽŽ"},
        {"ΆΈΉΊΌΎΏΑΒΓΔΕΖΗΘΙΚΛΜΝΞΟΠΡΣΤΥΦΧΨΩΪΫάέήίαβγδεζηθικλμνξοπρςστυφχψωϊϋόύώ",
         "ΆΈΉΊΌΎΏΑΒΓΔΕΖΗΘΙΚΛΜΝΞΟΠΡΣΤΥΦΧΨΩΪΫΆΈΉΊΑΒΓΔΕΖΗΘΙΚΛΜΝΞΟΠΡΣΣΤΥΦΧΨΩΪΫΌΎΏ"},
        {"ЀЁЂЃЄЅІЇЈЉЊЋЌЍЎЏАБВГДЕЖЗИЙКЛМНОПРСТУФХЦЧШЩЪЫЬЭЮЯабвгдежзийклмнопрстуфхцчшщъыьэюяѐёђѓєѕіїјљњћќѝўџ",
         "ЀЁЂЃЄЅІЇЈЉЊЋЌЍЎЏАБВГДЕЖЗИЙКЛМНОПРСТУФХЦЧШЩЪЫЬЭЮЯАБВГДЕЖЗИЙКЛМНОПРСТУФХЦЧШЩЪЫЬЭЮЯЀЁЂЃЄЅІЇЈЉЊЋЌЍЎЏ"}};
    for (auto const& [all, in_capitals] : blocks) CHECK(capitals(all) == in_capitals);
}

TEST_CASE("words are put into capitals whole") {
    CHECK(capitals("Weizenmehl") == "WEIZENMEHL");
    CHECK(capitals("Haselnüsse") == "HASELNÜSSE");
    CHECK(capitals("süß") == "SÜSS");
    CHECK(capitals("crème fraîche, 30 %") == "CRÈME FRAÎCHE, 30 %");
    CHECK(capitals("小麦") == "小麦");
    CHECK(capitals("").empty());
}

TEST_CASE("bytes that are no UTF-8 stay") {
    CHECK(capitals("a\xFF"
                   "b") == "A\xFF"
                           "B");
    CHECK(capitals("\xC3") == "\xC3");
}

TEST_CASE("characters of every length become bytes") {
    CHECK(groat::utf8('a') == "a");
    CHECK(groat::utf8(U'Ü') == "Ü");
    CHECK(groat::utf8(U'€') == "€");
    CHECK(groat::utf8(U'🥐') == "🥐");
}

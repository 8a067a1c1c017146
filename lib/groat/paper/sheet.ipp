#pragma once

#include <groat/paper/sheet.hpp>

#include <groat/base/linkage.hpp>

#include <utility>

namespace groat {

GROAT_INLINE Sheet::Sheet(std::string its_kind, std::string its_audience,
                          std::vector<std::string> its_letterhead, std::string its_title,
                          std::vector<Section> its_sections)
    : kind(std::move(its_kind)),
      audience(std::move(its_audience)),
      letterhead(std::move(its_letterhead)),
      title(std::move(its_title)),
      sections(std::move(its_sections)) {}
GROAT_INLINE Sheet::Sheet() = default;
GROAT_INLINE Sheet::Sheet(Sheet const&) = default;
GROAT_INLINE Sheet::Sheet(Sheet&&) noexcept = default;
GROAT_INLINE Sheet& Sheet::operator=(Sheet const&) = default;
GROAT_INLINE Sheet& Sheet::operator=(Sheet&&) noexcept = default;
GROAT_INLINE Sheet::~Sheet() = default;

} // namespace groat

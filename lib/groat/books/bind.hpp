/// Keys to members: a value that says which member of what it is read into.
///
///     {"due", may, to<&Order::due>(a_date), "2026-11-28", "The day it is wanted for."},
///
/// The member's type says how it is read (read_value.hpp), the value what it has to be. `Fields::read_into` reads
/// all keys that are bound to members of one type.
#pragma once

#include <groat/books/shape.hpp>

#include <utility>

namespace groat {

/// Its address tells a type.
template <class T> inline constexpr char owner_of = 0;

namespace bind_detail {

template <class Member> struct Owner;
template <class T, class Of> struct Owner<T Of::*> { using Type = Of; };

} // namespace bind_detail

namespace shapes {

/// `value`, read into a member; of a member's member where more are named.
template <auto member, auto... inner> [[nodiscard]] constexpr Value to(Value value) {
    using Of = typename bind_detail::Owner<decltype(member)>::Type;
    value.put = [](void* object, Node const& node, KeyShape const& key, Reading const& reading) {
        (void)read_value(((static_cast<Of*>(object)->*member).*....*inner), node, key, reading);
    };
    value.owner = &owner_of<Of>;
    return value;
}

/// The same into a variant, as one of its kinds.
template <auto member, class As> [[nodiscard]] constexpr Value to_one(Value value) {
    using Of = typename bind_detail::Owner<decltype(member)>::Type;
    value.put = [](void* object, Node const& node, KeyShape const& key, Reading const& reading) {
        As read{};
        if (read_value(read, node, key, reading))
            static_cast<Of*>(object)->*member = std::move(read);
    };
    value.owner = &owner_of<Of>;
    return value;
}

} // namespace shapes

} // namespace groat

/// A mapping as a list of fields of a shape: a key that the shape does not know is an error before any value is
/// judged, so that a misspelt key never passes for one that was left out.
#pragma once

#include <groat/base/diagnostic.hpp>
#include <groat/books/bind.hpp>
#include <groat/yaml/node.hpp>

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace groat {

/// Reports that something else was expected at a node.
/// Example  `expected("a list", node, found, "- one")`  ->  "a list is expected here, not a mapping"
void expected(std::string_view what, Node const& node, Diagnostics& found, std::string help = {});

/// The keys and values of one mapping while it is being read, by their index in a shape. This is what all
/// `Fields` share.
class FieldSearch {
public:
    FieldSearch(Node const& node, Shape const& shape, Diagnostics& found);
    FieldSearch(FieldSearch const&) = delete;
    FieldSearch& operator=(FieldSearch const&) = delete;

    [[nodiscard]] Span where() const { return node_.where; }
    [[nodiscard]] bool is_mapping() const { return node_.is_mapping(); }

    /// Reports what is missing, and what stands where nobody asks for it. To be called last.
    void close();

    /// Reads whatever is bound to a member of `object` (see bind.hpp); other keys are for the caller.
    template <class T> void read_into(T& object, Reading const& reading) {
        read_bound(&object, &owner_of<T>, reading);
    }

protected:
    Node const* at(std::size_t key, bool is_needed, std::string_view example);
    [[nodiscard]] Span place_of(std::size_t key) const;

private:
    void read_bound(void* object, void const* owner, Reading const& reading);
    static constexpr std::size_t none = static_cast<std::size_t>(-1);
    void meet_strangers();
    [[nodiscard]] bool stands(std::string_view key) const {
        return fields_[shape_.find(key)].at != none;
    }
    /// Reports keys that stand against their conditions.
    void check_conditions();
    void check(std::size_t key, Condition const& condition);
    void refuse_both(std::size_t one, std::size_t other, std::string help);
    void spare_misnamed();
    /// What to say of a key that is not declared; takes note of which it stands for.
    std::string help_on(std::size_t stranger, bool may_guess);
    [[nodiscard]] std::string list_of_keys() const;

    struct Field {
        std::size_t at = none; ///< in the node
        bool is_asked = false;
        bool is_misnamed = false; ///< another word stands in its place, which is reported already
    };
    struct Missing {
        std::size_t key;
        std::string_view example;
    };
    Node const& node_;
    Shape const& shape_;
    Diagnostics& found_;
    std::vector<Field> fields_; ///< by the index of their key
    std::vector<Missing> missing_;
    std::size_t found_before_; ///< findings, when the keys had been looked at
};

/// The fields of a mapping of one shape.
///
///     Fields<shapes::offer> fields(node, found);
///     Node const* item = fields.at("item");       // reported where it is missing: it must stand
///     Node const* code = fields.at("code");       // null where it is absent
///     fields.read_into(offer, reading);           // all that is bound to a member of it
///     fields.close();
///
/// Keys are looked at when it is made, before any value is. One that the shape does not know is an error, and is
/// read as the key that was meant where that is plain, so that nothing follows from the slip. A node that is
/// no mapping is reported once; it then has no fields, and none is missed.
template <Shape const& shape> class Fields : public FieldSearch {
public:
    using Key = KeyOf<shape>;

    Fields(Node const& node, Diagnostics& found) : FieldSearch(node, shape, found) {}

    /// The value of a key, or null where it is absent, which is reported where it must stand.
    [[nodiscard]] Node const* at(Key key) {
        KeyShape const& declared = shape.keys[key.index()];
        return FieldSearch::at(key.index(), declared.need == KeyNeed::must, declared.example);
    }
    /// The same for a key that must stand here by what else stands; `example` is for here.
    [[nodiscard]] Node const* needed(Key key, std::string_view example = {}) {
        return FieldSearch::at(key.index(), true,
                               example.empty() ? shape.keys[key.index()].example : example);
    }
    /// Reads whatever is bound to a member of `object`; a shape that has nothing of it does not compile.
    template <class T> void read_into(T& object, Reading const& reading) {
        static_assert(
            std::any_of(shape.keys.begin(), shape.keys.end(),
                        [](KeyShape const& key) { return key.value.owner == &owner_of<T>; }),
            "no key of the shape is bound to a member of it");
        FieldSearch::read_into(object, reading);
    }
    /// The value of a key that is bound to no member.
    template <class T> [[nodiscard]] std::optional<T> read(Key key, Reading const& reading) {
        std::optional<T> value;
        if (Node const* const node = at(key))
            (void)read_value(value, *node, shape.keys[key.index()], reading);
        return value;
    }
    /// The place of a key; that of the mapping where it is absent.
    [[nodiscard]] Span place_of(Key key) const { return FieldSearch::place_of(key.index()); }
    /// The place of what is called so: that of its name, or of the mapping where it has none.
    [[nodiscard]] Span origin(Key key) {
        Node const* const name = FieldSearch::at(key.index(), false, {});
        return name != nullptr ? name->where : where();
    }
};

/// Whether a mapping is of one shape rather than of another: `key`, which only the one has, stands in it or, where
/// `other_key` does not, is what someone meant who made a slip.
[[nodiscard]] bool is_told_by(Node const& node, std::string_view key, std::string_view other_key);

std::string_view kind_text(Node const& node);

/// Whether a value can be what is meant by a key, as far as its kind tells.
bool has_form_of(Node const& node, Value const& value);

/// What is written last in a node begins here.
Span last_place(Node const& node);

} // namespace groat

#ifndef GROAT_COMPILED
#include <groat/books/fields.ipp>
#endif

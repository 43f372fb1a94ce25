// Visits every text of a thing and of all that it holds: names, notes, formulas, references.
#pragma once

#include "model/project/project_fields.h"
#include "model/project/type_traits.h"

#include <string>
#include <type_traits>
#include <utility>
#include <variant>
#include <vector>

namespace model {

// The things around a text, from the outside in, as the user knows them: "frame counter".
using Trail = std::vector<std::string>;

inline std::string where_text(const Trail& trail) {
    std::string text;
    for (const std::string& step : trail) text += (text.empty() ? "" : ", ") + step;
    return text;
}

template <class T>
std::string described(const T& thing) {
    std::string text{thing_name<T>};
    if constexpr (requires { thing.name; }) {
        if (!thing.name.empty()) text += " " + thing.name;
    }
    if constexpr (requires { thing.members[0] + thing.members[1]; }) {
        text += " " + thing.members[0] + " + " + thing.members[1];
    }
    return text;
}

// `See` is called as see(meaning, text, trail); the text is const when the thing is.
template <class T, class See>
class TextWalk {
public:
    TextWalk(T& thing, Trail& trail, See& see) : thing_{thing}, trail_{trail}, see_{see} {}

    template <class M, class Owner>
    void operator()(const Field& field, M Owner::*member) {
        visit(field.meaning, thing_.*member);
    }

    template <class Alternatives, class Variant, class Owner>
    void one_of(const Alternatives& alternatives, Variant Owner::*member) {
        auto& chosen = thing_.*member;
        const Meaning meaning = alternatives[chosen.index()].meaning;
        std::visit([&](auto& value) { visit(meaning, value); }, chosen);
    }

private:
    template <class V>
    void visit(const Meaning& meaning, V& value) {
        using Value = std::remove_const_t<V>;
        if constexpr (std::is_same_v<Value, std::string>) {
            see_(meaning, value, std::as_const(trail_));
        } else if constexpr (is_optional<Value>) {
            if (value) visit(meaning, *value);
        } else if constexpr (is_row<Value> || is_list<Value>) {
            for (auto& item : value) visit(meaning, item);
        } else if constexpr (Thing<Value>) {
            trail_.push_back(described(value));
            TextWalk<V, See> inner{value, trail_, see_};
            visit_fields(inner, Of<Value>{});
            trail_.pop_back();
        }
    }

    T& thing_;
    Trail& trail_;
    See& see_;
};

template <class T, class See>
void walk_texts(T& thing, See see) {
    Trail trail;
    TextWalk<T, See> walk{thing, trail, see};
    visit_fields(walk, Of<std::remove_const_t<T>>{});
}

}  // namespace model

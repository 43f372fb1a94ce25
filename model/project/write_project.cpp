#include "engine/files/json_text.h"
#include "model/project/project_fields.h"
#include "model/project/project_json.h"
#include "model/project/type_traits.h"

#include <charconv>
#include <cmath>
#include <type_traits>
#include <utility>

namespace model {

namespace {

// Appends JSON to a text; knows how far in it is.
class Writer {
public:
    template <class T>
    void value(const T& it);

    void key(std::string_view key) { text_ += engine::json_quoted(key) + ": "; }
    void raw(std::string_view text) { text_ += text; }

    void open(char bracket) {
        text_ += bracket;
        ++depth_;
    }
    void close(char bracket) {
        --depth_;
        if (!is_on_one_line_) new_line();
        text_ += bracket;
    }
    void next(bool is_first) {
        if (!is_first) text_ += is_on_one_line_ ? ", " : ",";
        if (!is_on_one_line_) new_line();
    }

    std::string text() && { return std::move(text_); }

private:
    void new_line() { text_ += '\n' + std::string(2 * depth_, ' '); }

    void number(double it);

    template <class List>
    void list(const List& it, bool on_one_line);

    template <Thing T>
    void thing(const T& it);

    std::string text_;
    std::size_t depth_ = 0;
    bool is_on_one_line_ = false;

    template <Thing T>
    friend class ThingWriter;
};

// Writes the fields of one thing, leaving out those that have their default value.
template <Thing T>
class ThingWriter {
public:
    ThingWriter(Writer& writer, const T& it, bool is_first = true)
        : writer_{writer}, it_{it}, is_first_{is_first} {}

    template <class M>
    void operator()(const Field& field, M T::*member) {
        if (!field.is_needed && it_.*member == usual_.*member) return;
        write(field.key, it_.*member);
    }

    template <class Alternatives, class Variant>
    void one_of(const Alternatives& alternatives, Variant T::*member) {
        const Variant& chosen = it_.*member;
        std::visit([&](const auto& value) { write(alternatives[chosen.index()].key, value); },
                   chosen);
    }

private:
    template <class M>
    void write(std::string_view key, const M& value) {
        writer_.next(is_first_);
        is_first_ = false;
        writer_.key(key);
        writer_.value(value);
    }

    Writer& writer_;
    const T& it_;
    const T usual_{};
    bool is_first_;
};

template <class T>
void Writer::value(const T& it) {
    if constexpr (std::is_same_v<T, bool>) {
        text_ += it ? "true" : "false";
    } else if constexpr (std::is_same_v<T, double>) {
        number(it);
    } else if constexpr (std::is_arithmetic_v<T>) {
        text_ += std::to_string(it);
    } else if constexpr (std::is_enum_v<T>) {
        text_ += engine::json_quoted(words_for<T>[static_cast<std::size_t>(it)]);
    } else if constexpr (is_optional<T>) {
        value(*it);
    } else if constexpr (is_row<T>) {
        list(it, true);
    } else if constexpr (is_list<T>) {
        list(it, !Thing<typename T::value_type>);
    } else if constexpr (Thing<T>) {
        thing(it);
    } else {
        text_ += engine::json_quoted(it);
    }
}

// The shortest text that reads back as the same number. What is no number becomes null, which is
// refused on reading; edits let none in.
void Writer::number(double it) {
    if (!std::isfinite(it)) {
        text_ += "null";
        return;
    }
    std::array<char, 32> digits{};
    const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), it).ptr;
    text_.append(digits.data(), end);
}

template <class List>
void Writer::list(const List& it, bool on_one_line) {
    const bool outer = std::exchange(is_on_one_line_, is_on_one_line_ || on_one_line);
    open('[');
    for (const auto& item : it) {
        next(&item == &*it.begin());
        value(item);
    }
    close(']');
    is_on_one_line_ = outer;
}

template <Thing T>
void Writer::thing(const T& it) {
    const bool outer = std::exchange(is_on_one_line_, is_on_one_line_ || is_on_one_line<T>);
    open('{');
    ThingWriter<T> fields{*this, it};
    visit_fields(fields, Of<T>{});
    close('}');
    is_on_one_line_ = outer;
}

}  // namespace

std::string to_json_text(const Project& project) {
    Writer writer;
    writer.open('{');
    writer.next(true);
    writer.key("barwright");
    writer.value(project_format);
    ThingWriter<Project> fields{writer, project, false};
    visit_fields(fields, Of<Project>{});
    writer.close('}');
    writer.raw("\n");
    return std::move(writer).text();
}

}  // namespace model

// Result<T>: a value, or the reason there is none. A small subset of C++23 std::expected, with the
// same names, so that it can become an alias once every compiler we build with has it.
#pragma once

#include <functional>
#include <string>
#include <utility>
#include <variant>

namespace engine {

enum class ErrorCode {
    invalid_text,    // a text that cannot be read as what it should be
    invalid_value,   // readable, but not allowed here
    unknown_name,    // refers to something that is not there
    duplicate_name,  // two things of one kind with one name
    cycle,           // formulas that need each other
    out_of_range,    // too large or too small to work with
    bad_file,        // a file that cannot be read as what it should be
    newer_version,   // a file written by a later version of the program
    cannot_write,    // the disk or the system refused
    cancelled,       // the user stopped it; nothing is wrong with what was given
};

struct Error {
    ErrorCode code{};
    std::string where;    // "frame counter, plane left" or a JSON pointer: what the user can find
    std::string message;  // one sentence, no trailing stop, with the mend where there is one

    bool operator==(const Error&) const = default;
};

// "where: message", or the message alone where there is no place.
inline std::string to_text(const Error& error) {
    return error.where.empty() ? error.message : error.where + ": " + error.message;
}

template <class T>
class [[nodiscard]] Result {
public:
    using value_type = T;

    Result(T value) : state_{std::in_place_index<0>, std::move(value)} {}
    Result(Error error) : state_{std::in_place_index<1>, std::move(error)} {}

    bool has_value() const { return state_.index() == 0; }
    explicit operator bool() const { return has_value(); }

    const T& value() const& { return std::get<0>(state_); }
    T&& value() && { return std::get<0>(std::move(state_)); }
    const Error& error() const { return std::get<1>(state_); }

    const T& operator*() const& { return value(); }
    const T* operator->() const { return &value(); }

    template <class F>
    auto and_then(F&& f) const -> std::invoke_result_t<F, const T&> {
        if (!has_value()) return error();
        return std::invoke(std::forward<F>(f), value());
    }

private:
    std::variant<T, Error> state_;
};

// What an operation gives that has nothing to say when it succeeds.
struct Done {
    bool operator==(const Done&) const = default;
};

}  // namespace engine

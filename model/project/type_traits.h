// Which of the standard containers a field of a project is.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <vector>

namespace model {

template <class T>
inline constexpr bool is_optional = false;
template <class T>
inline constexpr bool is_optional<std::optional<T>> = true;

template <class T>
inline constexpr bool is_list = false;  // of any length
template <class T>
inline constexpr bool is_list<std::vector<T>> = true;

template <class T>
inline constexpr bool is_row = false;  // of fixed length
template <class T, std::size_t n>
inline constexpr bool is_row<std::array<T, n>> = true;

}  // namespace model

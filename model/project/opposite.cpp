#include "model/project/opposite.h"

#include "model/project/follow_room.h"

#include <algorithm>
#include <array>

namespace model {

namespace {

std::string with_capital(std::string word) {
    word.front() = static_cast<char>(word.front() - 'a' + 'A');
    return word;
}

std::string opposite_word(const std::string& word, Axis across) {
    for (std::size_t side = 0; side < 2; ++side) {
        const std::string here = frame_sides[index_of(across)][side];
        const std::string there = frame_sides[index_of(across)][1 - side];
        if (word == here) return there;
        if (word == with_capital(here)) return with_capital(there);
    }
    return word;
}

}  // namespace

std::string opposite_name(const std::string& name, Axis across) {
    std::string text;
    std::size_t begin = 0;
    while (begin <= name.size()) {
        const std::size_t space = std::min(name.find(' ', begin), name.size());
        text += opposite_word(name.substr(begin, space - begin), across);
        if (space < name.size()) text += ' ';
        begin = space + 1;
    }
    return text;
}

}  // namespace model

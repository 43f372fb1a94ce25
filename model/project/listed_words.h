// Several things in one sentence.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace model {

// "door", "door and shelf", "door, shelf and lid".
inline std::string listed_words(const std::vector<std::string>& things) {
    std::string text;
    for (std::size_t i = 0; i < things.size(); ++i) {
        if (i > 0) text += i + 1 == things.size() ? " and " : ", ";
        text += things[i];
    }
    return text;
}

}  // namespace model

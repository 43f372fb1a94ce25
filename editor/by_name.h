// The thing of a name among things that have names.
#pragma once

#include <algorithm>
#include <string_view>
#include <vector>

namespace editor {

// The first of that name; null when there is none.
template <class Thing>
const Thing* by_name(const std::vector<Thing>& things, std::string_view name) {
    const auto at = std::find_if(things.begin(), things.end(),
                                 [&](const Thing& thing) { return thing.name == name; });
    return at == things.end() ? nullptr : &*at;
}

}  // namespace editor

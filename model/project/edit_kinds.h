// What an edit holds, for those who tell all kinds apart.
#pragma once

#include "model/project/edit.h"

#include <variant>

namespace model {

template <class Kinds>
struct VariantOf;
template <class... Kinds>
struct VariantOf<EditKinds<Kinds...>> {
    using Type = std::variant<Kinds...>;
};

struct OneOfAllEdits {
    VariantOf<AllEdits>::Type kind;
};

}  // namespace model

// Products of two 64-bit numbers, exactly.
#pragma once

namespace engine::cutting {

__extension__ typedef __int128 Wide;

}  // namespace engine::cutting

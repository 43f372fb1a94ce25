#include "engine/render/image.h"

#include <stb_image_write.h>

#include <cassert>
#include <cstddef>

namespace engine {

std::string png_bytes(const Image& image) {
    assert(image.rgba.size() ==
           4U * static_cast<std::size_t>(image.width) * static_cast<std::size_t>(image.height));
    std::string bytes;
    const auto take = [](void* into, void* data, int size) {
        static_cast<std::string*>(into)->append(static_cast<const char*>(data),
                                                static_cast<std::size_t>(size));
    };
    stbi_write_png_to_func(take, &bytes, image.width, image.height, 4, image.rgba.data(),
                           4 * image.width);
    return bytes;
}

}  // namespace engine

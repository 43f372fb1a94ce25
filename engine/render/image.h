// A picture in memory, and as a PNG file's bytes.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace engine {

struct Image {
    int width = 0;
    int height = 0;
    std::vector<std::uint8_t> rgba;  // rows from the top, four bytes a pixel

    bool operator==(const Image&) const = default;
};

// Half as wide and high, each pixel the mean of four; an odd last row or column is dropped.
Image halved(const Image& image);

// The same image gives the same bytes.
std::string png_bytes(const Image& image);

}  // namespace engine

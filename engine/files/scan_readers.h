// The readers of scan_mesh.h, one for each kind of file, and how the kind is told by content.
#pragma once

#include "engine/files/scan_reading.h"

namespace engine {

// The length that a binary STL file states is its own: the only sure mark of one.
bool is_binary_stl(std::string_view bytes);
// "solid" alone is none: many binary files begin with it.
bool is_ascii_stl(std::string_view bytes);
bool is_ply(std::string_view bytes);
bool is_glb(std::string_view bytes);
bool is_obj(std::string_view bytes);  // a guess: the first word is one of OBJ

// False: reading.error() has the reason.
bool read_stl(ScanReading& reading);
bool read_ply(ScanReading& reading);
bool read_obj(ScanReading& reading);
bool read_glb(ScanReading& reading);

}  // namespace engine

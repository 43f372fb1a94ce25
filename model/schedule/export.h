// Pieces as solids or triangles for other programs: the bytes of an exchange file.
#pragma once

#include "engine/result.h"
#include "model/catalogue/catalogue.h"
#include "model/project/project.h"
#include "model/resolve/resolved.h"

#include <optional>
#include <string>
#include <string_view>

namespace model {

class PieceWords;

enum class ExportFormat { step, glb, stl, obj };

// By a file name's ending, in small or capital letters: ".step" and ".stp", ".glb", ".stl", ".obj".
std::optional<ExportFormat> export_format(std::string_view ending);

// All pieces in their places in the room, mm (in a GLB metres, as its standard asks, y up).
// Fasteners are not in it. The same bytes for the same input. Errors (invalid_value): no piece; for
// STEP, a piece that makes no solid.
engine::Result<std::string> exported(const Project& project,
                                     const Catalogue& catalogue,
                                     const Resolved& resolved,
                                     ExportFormat format);

// ISO 10303-21 with the schema of ISO 10303-214: an assembly of one product for each piece, named
// by mark and member, with exact planes and cylinders.
engine::Result<std::string> step_file(const Project& project,
                                      const Catalogue& catalogue,
                                      const Resolved& resolved);

// Binary glTF 2.0: one node and mesh for each piece.
std::string glb_file(const Project& project, const Catalogue& catalogue, const Resolved& resolved);

// Binary STL of all pieces together.
std::string stl_file(const Catalogue& catalogue, const Resolved& resolved);

// Wavefront OBJ: one object for each piece.
std::string obj_file(const Project& project, const Catalogue& catalogue, const Resolved& resolved);

// "A1 post left"; a piece without a mark has its member's name alone.
std::string export_name(const PieceWords& words, const Resolved& resolved, Index piece);

}  // namespace model

// What the window says of a panel: its sheet as it is cut, the clear way of a door, its findings.
#pragma once

#include "editor/derived.h"
#include "engine/measure/length.h"
#include "engine/measure/tape.h"
#include "model/project/project.h"

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace editor {

// Lengths along the two axes of a panel's face, in order.
using FaceSize = std::array<engine::Length, 2>;

// Its piece; none where it could not be made.
std::optional<model::Index> panel_piece(const Derived& derived,
                                        std::string_view frame,
                                        std::string_view panel);

// The sheet once it is cut to the frame.
std::optional<FaceSize> sheet_size_of(const Derived& derived,
                                      std::string_view frame,
                                      std::string_view panel);

// Between the members behind a door or a drawer front.
std::optional<FaceSize> clear_opening_of(const Derived& derived,
                                         std::string_view frame,
                                         std::string_view panel);

std::vector<const model::Finding*> findings_of_panel(const Derived& derived,
                                                     std::string_view frame,
                                                     std::string_view panel);

// "26 x 18 3/4".
std::string face_size_text(const FaceSize& size, const engine::TapeStyle& shown);

// "12.6 sq in", or "81.1 cm\u00b2" where lengths are metric.
std::string area_text(double mm2, const engine::TapeStyle& shown);

// The axes of a frame as a maker says them: "across", "deep", "up".
const char* word_of(model::Axis axis);

// The faces of a bay, in a maker's words.
struct FaceWord {
    model::Axis axis;
    model::Sense side;
    const char* word;  // "left"
};

const std::array<FaceWord, 6>& face_words();

}  // namespace editor

#include "editor/panel_facts.h"

#include "editor/dimension_values.h"
#include "editor/findings_about.h"
#include "model/resolve/resolved.h"

#include <algorithm>
#include <cstdio>

namespace editor {

using engine::Length;

std::optional<model::Index> panel_piece(const Derived& derived,
                                        std::string_view frame,
                                        std::string_view panel) {
    const auto& frames = derived.project->frames;
    const auto& pieces = derived.resolved.pieces;
    for (model::Index i = 0; i < pieces.size(); ++i) {
        const auto& piece = pieces[i];
        if (piece.kind != model::PieceKind::panel || piece.frame >= frames.size()) continue;
        const auto& its_frame = frames[piece.frame];
        if (its_frame.name != frame || piece.stated >= its_frame.panels.size()) continue;
        if (its_frame.panels[piece.stated].name == panel) return i;
    }
    return std::nullopt;
}

std::optional<FaceSize> sheet_size_of(const Derived& derived,
                                      std::string_view frame,
                                      std::string_view panel) {
    const auto index = panel_piece(derived, frame, panel);
    if (!index) return std::nullopt;
    const auto& piece = derived.resolved.pieces[*index];
    const auto axes = model::across(static_cast<model::Axis>(piece.plates[0].normal_axis));
    FaceSize size;
    for (std::size_t k = 0; k < 2; ++k) {
        const auto axis = model::index_of(axes[k]);
        size[k] = Length::from_nm(piece.extents.hi[axis] - piece.extents.lo[axis]);
    }
    return size;
}

std::optional<FaceSize> clear_opening_of(const Derived& derived,
                                         std::string_view frame,
                                         std::string_view panel) {
    const auto index = panel_piece(derived, frame, panel);
    if (!index) return std::nullopt;
    for (const auto& opening : derived.resolved.openings) {
        if (opening.piece != *index) continue;
        return FaceSize{Length::from_nm(opening.size[0]), Length::from_nm(opening.size[1])};
    }
    return std::nullopt;
}

std::vector<const model::Finding*> findings_of_panel(const Derived& derived,
                                                     std::string_view frame,
                                                     std::string_view panel) {
    return findings_about(derived.findings,
                          {model::SubjectKind::panel, std::string(frame), std::string(panel)});
}

std::string face_size_text(const FaceSize& size, const engine::TapeStyle& shown) {
    const auto text = [&](Length length) {
        return quantity_text({.kind = engine::QuantityKind::length, .length = length}, shown);
    };
    return text(size[0]) + " x " + text(size[1]);
}

std::string area_text(double mm2, const engine::TapeStyle& shown) {
    const bool metric = is_metric(shown);
    const double value = metric ? mm2 / 100.0 : mm2 / (25.4 * 25.4);
    std::array<char, 64> text{};
    std::snprintf(text.data(), text.size(), "%.1f", value);
    return text.data() + std::string(metric ? " cm\xC2\xB2" : " sq in");
}

const char* word_of(model::Axis axis) {
    return axis == model::Axis::x ? "across" : axis == model::Axis::y ? "deep" : "up";
}

const std::array<FaceWord, 6>& face_words() {
    using model::Axis;
    using model::Sense;
    static constexpr std::array<FaceWord, 6> words{{{Axis::y, Sense::minus, "front"},
                                                    {Axis::y, Sense::plus, "back"},
                                                    {Axis::x, Sense::minus, "left"},
                                                    {Axis::x, Sense::plus, "right"},
                                                    {Axis::z, Sense::minus, "bottom"},
                                                    {Axis::z, Sense::plus, "top"}}};
    return words;
}

}  // namespace editor

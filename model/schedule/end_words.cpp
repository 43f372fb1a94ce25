#include "model/schedule/end_words.h"

#include "model/resolve/bar_cuts.h"
#include "model/schedule/length_texts.h"
#include "model/schedule/told_text.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstdlib>
#include <numbers>
#include <optional>
#include <string_view>

namespace model {
namespace {

// What a section is called along one of its axes: what a slope along it runs across, and the
// places where the section is least and most along it.
struct AxisWords {
    std::string_view across;
    std::string_view least;
    std::string_view most;
};

std::array<AxisWords, 2> axis_words(SectionForm form) {
    switch (form) {
        case SectionForm::angle:
            return {{{"leg a", "the heel", "the toe of leg a"},
                     {"leg b", "the heel", "the toe of leg b"}}};
        case SectionForm::flat:
            return {{{"the face", "the heel edge", "the far edge"},
                     {"the thickness", "the outer face", "the inner face"}}};
        case SectionForm::channel:
            return {{{"the web", "the near flange", "the far flange"},
                     {"the flanges", "the web", "the toes"}}};
        case SectionForm::tube:
            return {{{"side a", "side b", "far side b"}, {"side b", "side a", "far side a"}}};
    }
    return {};
}

std::string mitre_words(double slope, const AxisWords& words) {
    return "mitre " + saw_degrees_text(slope) + " deg across " + std::string(words.across) +
           ", long point at " + std::string(slope > 0.0 ? words.least : words.most);
}

std::string cut_words(const PieceEnd& end, const Section& section) {
    const auto words = axis_words(section.form);
    std::string text;
    for (std::size_t axis = 0; axis < 2; ++axis) {
        if (end.slope[axis] == 0.0) continue;
        if (!text.empty()) text += "; ";
        text += mitre_words(end.slope[axis], words[axis]);
    }
    return text.empty() ? "square" : text;
}

// How lengths are put into words.
class LengthWords {
public:
    LengthWords(const Project& project, bool tells_exact)
        : style_{project.shown}, tells_exact_{tells_exact} {
        style_.with_unit = true;
    }

    std::string operator()(Nm nm) const {
        const auto length = Length::from_nm(nm);
        auto text = shown_text(length, style_);
        if (!tells_exact_ || engine::is_on_mark(length, style_) || shows_hundredths(style_))
            return text;
        return text + " (" + told_mm(length) + " mm)";
    }

private:
    engine::TapeStyle style_;
    bool tells_exact_ = false;
};

std::string notch_words(const PieceEnd& end, const Section& section, const LengthWords& words) {
    std::string text;
    const auto walls = section_plates(section);
    for (std::size_t wall = 0; wall < std::min(walls.size(), end.wall_back.size()); ++wall) {
        if (end.wall_back[wall] <= 0) continue;
        text +=
            "; " + std::string(walls[wall].name) + " notched back " + words(end.wall_back[wall]);
    }
    return text;
}

// How far the cut recedes for each length across where that end of the outline is one straight edge
// from side to side: upward at the far end, downward at the datum end.
std::optional<double> slope_of_end(const Outline& outline, Nm width, bool is_far) {
    const auto& corners = outline.corners;
    const std::size_t n = corners.size();
    const Nm from_v = is_far ? 0 : width;
    for (std::size_t i = 0; i < n; ++i) {
        const auto& from = corners[i];
        const auto& to = corners[(i + 1) % n];
        if (from[1] != from_v || to[1] != width - from_v) continue;
        return static_cast<double>(from[0] - to[0]) / static_cast<double>(width);
    }
    return std::nullopt;
}

// An end that two cuts bring to a point: where that lies from the heel edge, and by how much the
// cuts recede from it for each length across, towards the heel edge and the far one.
struct PointedEnd {
    Nm from_heel = 0;
    std::array<double, 2> slopes{};
};

std::optional<PointedEnd> pointed_end(const Outline& outline, Nm width, bool is_far) {
    const auto& corners = outline.corners;
    const std::size_t n = corners.size();
    const Nm from_v = is_far ? 0 : width;
    for (std::size_t i = 0; i < n; ++i) {
        const auto& from = corners[i];
        const auto& point = corners[(i + 1) % n];
        const auto& to = corners[(i + 2) % n];
        if (from[1] != from_v || to[1] != width - from_v) continue;
        if (point[1] <= 0 || point[1] >= width) continue;
        const auto slope = [&](const std::array<Nm, 2>& edge) {
            const Nm recedes = is_far ? point[0] - edge[0] : edge[0] - point[0];
            return static_cast<double>(recedes) / static_cast<double>(std::abs(point[1] - edge[1]));
        };
        const PointedEnd end{point[1], {slope(is_far ? from : to), slope(is_far ? to : from)}};
        if (end.slopes[0] > 0.0 && end.slopes[1] > 0.0) return end;
    }
    return std::nullopt;
}

std::string pointed_words(const PointedEnd& end, const LengthWords& words) {
    return "to a point " + words(end.from_heel) + " from the heel edge: mitre " +
           saw_degrees_text(end.slopes[0]) + " deg to the heel edge, mitre " +
           saw_degrees_text(end.slopes[1]) + " deg to the far edge";
}

constexpr std::string_view to_outline = "to its outline";

std::string outlined_end(
    const LengthWords& words, const Resolved& resolved, const Piece& piece, Nm width, bool is_far) {
    const auto& plate = piece.plates[0];
    if (plate.outline_far != no_index) return std::string(to_outline);
    const auto& outline = resolved.outlines[plate.outline];
    const auto slope = slope_of_end(outline, width, is_far);
    if (!slope) {
        const auto point = pointed_end(outline, width, is_far);
        return point ? pointed_words(*point, words) : std::string(to_outline);
    }
    if (*slope == 0.0) return "square";
    return mitre_words(*slope, axis_words(SectionForm::flat)[0]);
}

std::array<std::string, 2> ends_in_words(const LengthWords& lengths,
                                         const Catalogue& catalogue,
                                         const Resolved& resolved,
                                         const Piece& piece) {
    const bool is_outlined = piece.plates[0].outline < resolved.outlines.size();
    if (is_of_sheet(piece.kind) || piece.section >= catalogue.sections.size()) {
        const std::string all{is_outlined ? to_outline : "square"};
        return {all, all};
    }
    const auto& section = catalogue.sections[piece.section];
    std::array<std::string, 2> words;
    for (std::size_t end = 0; end < 2; ++end) {
        words[end] = is_outlined ? outlined_end(lengths, resolved, piece, section.a.nm(), end == 1)
                                 : cut_words(piece.ends[end], section) +
                                       notch_words(piece.ends[end], section, lengths);
    }
    return words;
}

}  // namespace

std::string saw_degrees_text(double slope) {
    const double degrees = std::atan(std::abs(slope)) * 180.0 / std::numbers::pi;
    const double tenths = std::round(degrees * 10.0);
    std::array<char, 16> buffer{};
    const int decimals = std::fmod(tenths, 10.0) == 0.0 ? 0 : 1;
    const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), tenths / 10.0,
                                   std::chars_format::fixed, decimals)
                         .ptr;
    return {buffer.data(), end};
}

std::array<std::string, 2> end_words(const Project& project,
                                     const Catalogue& catalogue,
                                     const Resolved& resolved,
                                     const Piece& piece) {
    return ends_in_words({project, false}, catalogue, resolved, piece);
}

std::array<std::string, 2> told_end_words(const Project& project,
                                          const Catalogue& catalogue,
                                          const Resolved& resolved,
                                          const Piece& piece) {
    return ends_in_words({project, true}, catalogue, resolved, piece);
}

}  // namespace model

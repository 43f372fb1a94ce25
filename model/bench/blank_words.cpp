#include "model/bench/blank_words.h"

#include "model/schedule/end_words.h"
#include "model/schedule/length_texts.h"

#include <string_view>

namespace model {
namespace {

class FitWords {
public:
    FitWords(const Project& project,
             const Catalogue& catalogue,
             const Resolved& resolved,
             Index piece,
             const MadePiece& wanted,
             const BlankFit& fit)
        : project_{project},
          catalogue_{catalogue},
          resolved_{resolved},
          piece_{resolved.pieces[piece]},
          wanted_{wanted},
          fit_{fit} {
        style_.with_unit = true;
    }

    std::vector<std::string> faults() const {
        std::vector<std::string> words;
        for (const auto& fault : fit_.faults) words.push_back(fault_words(fault));
        return words;
    }

    std::vector<std::string> steps() const {
        std::vector<std::string> words;
        add_turn(words);
        add_cuts(words);
        if (!fit_.to_drill.empty()) words.push_back(drilling_words());
        for (const auto i : fit_.to_drill_up) {
            words.push_back("drill up " + hole_words(wanted_.holes[i]) + " to " + drill_words(i));
        }
        for (const auto i : fit_.to_tap) {
            words.push_back("tap " + hole_words(wanted_.holes[i]) + " for " + wanted_.holes[i].tap);
        }
        for (const auto i : fit_.to_leave) {
            words.push_back("the hole in " + hole_words(fit_.after_cutting(i)) +
                            " is wanted no more and stays open: deburr it");
        }
        return words;
    }

private:
    std::string length(Nm nm) const { return shown_text(Length::from_nm(nm), style_); }

    bool is_sheet() const { return is_of_sheet(piece_.kind); }

    std::string wall_words(std::uint8_t wall) const {
        if (is_sheet()) return "the face";
        const auto walls = section_plates(catalogue_.sections[piece_.section]);
        return wall < walls.size() ? std::string(walls[wall].name) : "a wall";
    }

    // "leg a 5 1/2 in at 11/16 in": from the datum end, then from the heel.
    std::string hole_words(const MadeHole& hole) const {
        return wall_words(hole.wall) + " " + length(hole.from_datum) + " at " + length(hole.gauge);
    }

    // "#30", "1/8 in"; of a hole without a drill its diameter.
    std::string drill_words(std::size_t wanted) const {
        const auto& hole = resolved_.holes_of(piece_)[wanted];
        if (hole.drill >= catalogue_.drills.size()) return length(hole.diameter);
        const auto& drill = catalogue_.drills[hole.drill];
        return drill.series == "fraction" ? drill.name + " in" : drill.name;
    }

    std::string drilling_words() const {
        const auto count = fit_.to_drill.size();
        std::string words =
            count == 1 ? "drill 1 hole more, from the datum end: "
                       : "drill " + std::to_string(count) + " holes more, from the datum end: ";
        for (const auto i : fit_.to_drill) {
            if (i != fit_.to_drill.front()) words += ", ";
            words += hole_words(wanted_.holes[i]) + " (" + drill_words(i);
            if (!wanted_.holes[i].tap.empty()) words += ", then tap for " + wanted_.holes[i].tap;
            words += ")";
        }
        return words;
    }

    void add_turn(std::vector<std::string>& words) const {
        if (fit_.turn.transpose) words.emplace_back("its length is now measured along its width");
        if (fit_.turn.reverse) words.emplace_back("its datum end is now what was the far end");
        if (fit_.turn.swap) words.emplace_back("its leg a is now what was leg b");
    }

    static std::string_view end_name(std::size_t end) {
        return end == 0 ? "the datum end" : "the far end";
    }

    void add_cuts(std::vector<std::string>& words) const {
        if (fit_.outline_anew) {
            words.emplace_back("cut it to its new outline");
            return;
        }
        for (std::size_t end = 0; end < 2; ++end) {
            if (fit_.cut[end] == 0 && !fit_.end_anew[end]) continue;
            std::string step =
                fit_.end_anew[end] ? "cut " : "cut " + length(fit_.cut[end]) + " off ";
            step += end_name(end);
            const auto shape = end_shape(end);
            if (shape != "square") step += ": " + shape;
            words.push_back(std::move(step));
        }
        constexpr std::array<std::string_view, 2> sides{"the heel side", "the far side"};
        for (std::size_t side = 0; side < 2; ++side) {
            if (fit_.across[side] == 0) continue;
            words.push_back("cut " + length(fit_.across[side]) + " off " +
                            std::string(sides[side]));
        }
    }

    std::string end_shape(std::size_t end) const {
        if (is_sheet()) return "square";
        return told_end_words(project_, catalogue_, resolved_, piece_)[end];
    }

    static std::string quoted_or_none(const std::string& text) {
        return text.empty() ? "none" : text;
    }

    std::string fault_words(const Fault& fault) const {
        switch (fault.kind) {
            case FaultKind::other_section:
                return "other section: made of " + section_name(fit_.made) + ", wanted " +
                       section_name(wanted_);
            case FaultKind::other_alloy:
                return "other material: made of " + quoted_or_none(fit_.made.alloy) + ", wanted " +
                       quoted_or_none(wanted_.alloy);
            case FaultKind::other_thickness:
                return "other thickness: made of " + length(fit_.made.thickness) + ", wanted " +
                       length(wanted_.thickness);
            case FaultKind::too_short:
                return length(fault.amount) + " too short";
            case FaultKind::too_narrow:
                return length(fault.amount) + " too narrow";
            case FaultKind::other_end:
                return std::string(end_name(fault.at)) + " is cut otherwise: wanted " +
                       end_shape(fault.at);
            case FaultKind::other_outline:
                return "cut to another outline";
            case FaultKind::drilled_elsewhere:
                return "drilled elsewhere: none of its holes is in its place";
            default:
                return hole_fault_words(fault);
        }
    }

    static std::string section_name(const MadePiece& piece) {
        return piece.section.empty() ? "sheet" : piece.section;
    }

    std::string hole_fault_words(const Fault& fault) const {
        const auto hole = "the hole in " + hole_words(fit_.after_cutting(fault.at));
        if (fault.kind == FaultKind::hole_cut_through) {
            return hole + ", wanted no more, lies in the new cut";
        }
        const auto& wanted = wanted_.holes[fault.other];
        if (fault.kind == FaultKind::hole_too_near) {
            return hole + ", wanted no more, lies within two diameters of a new one " +
                   length(wanted.from_datum) + " at " + length(wanted.gauge);
        }
        if (fault.kind == FaultKind::hole_too_large) {
            return hole + " is larger than " + drill_words(fault.other);
        }
        return hole + " is tapped for " + fit_.made.holes[fault.at].tap + ", wanted " +
               (wanted.tap.empty() ? "plain" : "for " + wanted.tap);
    }

    const Project& project_;
    const Catalogue& catalogue_;
    const Resolved& resolved_;
    const Piece& piece_;
    const MadePiece& wanted_;
    const BlankFit& fit_;
    engine::TapeStyle style_ = project_.shown;
};

}  // namespace

std::vector<std::string> words_of_fit(const Project& project,
                                      const Catalogue& catalogue,
                                      const Resolved& resolved,
                                      Index piece,
                                      const MadePiece& wanted,
                                      const BlankFit& fit) {
    if (fit.is_right()) return {};
    const FitWords words(project, catalogue, resolved, piece, wanted, fit);
    return fit.faults.empty() ? words.steps() : words.faults();
}

}  // namespace model

#include "model/resolve/panel_findings.h"

#include <utility>

namespace model {
namespace {

std::string listed(const std::vector<std::string>& names) {
    std::string text;
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (i > 0) text += i + 1 == names.size() ? " and " : ", ";
        text += "\"" + names[i] + "\"";
    }
    return text;
}

Finding warning(std::string code, Subject subject, std::string what, std::string mend) {
    return {.code = std::move(code),
            .severity = Severity::warning,
            .concerns = {std::move(subject)},
            .what = std::move(what),
            .mend = std::move(mend)};
}

}  // namespace

Subject panel_subject(const Frame& frame, const Panel& panel) {
    return {SubjectKind::panel, frame.name, panel.name};
}

Finding unknown_material(const Panel& panel, Subject subject) {
    const auto what = panel.material.empty()
                          ? std::string(
                                "its material is not stated, so it counts as weighing "
                                "nothing")
                          : "the catalogue has no sheet or alloy \"" + panel.material +
                                "\", so it counts as weighing nothing";
    return warning("unknown_material", std::move(subject), what,
                   "choose one that it has, or add it to the catalogue with its density");
}

Finding bad_thickness(Subject subject) {
    Finding finding = warning("bad_panel", std::move(subject), "its thickness is not above zero",
                              "give the thickness of the sheet; until then it is left out");
    finding.severity = Severity::error;
    return finding;
}

Finding panel_no_room(Subject subject) {
    Finding finding = warning(
        "panel_no_room", std::move(subject), "nothing is left of it between what stands there",
        "choose another face or overlay instead of inset, or make the bay larger; it is "
        "left out");
    finding.severity = Severity::error;
    return finding;
}

Finding panel_in_parts(Subject subject) {
    return warning("panel_in_parts", std::move(subject),
                   "what stands in its way cuts it into several parts; only the largest is cut",
                   "state a panel for each bay, or choose overlay instead of inset");
}

Finding nothing_behind(Subject subject) {
    return warning(unfastened_code, std::move(subject),
                   "no leg stands behind it that it could be fastened to",
                   "choose overlay, turn a leg behind it, or add cleats");
}

Finding little_behind(Subject subject) {
    return warning(unfastened_code, std::move(subject),
                   "only corners of legs lie behind it, too small for a fastener",
                   "turn a leg behind it, add cleats, or choose a bay with members on its edges");
}

Finding cut_out_left_out(const CutOut& cut_out, const std::string& why, Subject subject) {
    Finding finding =
        warning("bad_cut_out", std::move(subject), "its cut-out \"" + cut_out.name + "\" " + why,
                "move it or make it smaller; until then it is not cut");
    finding.severity = Severity::error;
    return finding;
}

Finding stands_off(const std::vector<std::string>& planes,
                   Nm gap,
                   const engine::TapeStyle& shown,
                   Subject subject) {
    const Length length = Length::from_nm(gap);
    Finding finding =
        warning("panel_stands_off", std::move(subject),
                "along " + listed(planes) + " it touches nothing: the members there lie " +
                    length_in_words(length, shown) + " deeper, and no fastener is put there",
                "put a shim strip " + length_in_words(length, shown) +
                    " thick between and drill through, or leave that edge loose");
    finding.severity = Severity::note;
    finding.numbers = {{"gap", length}};
    return finding;
}

Finding not_a_rivet(const Catalogue& catalogue, const std::string& id, Subject subject) {
    const bool is_screw = find_screw(catalogue, id) != nullptr;
    return warning(is_screw ? "panel_is_riveted" : "unknown_fastener", std::move(subject),
                   is_screw ? "screws are not laid out in panels yet"
                            : "the catalogue has no fastener \"" + id + "\"",
                   "choose a blind rivet; until then one is chosen as the shop says or by the "
                   "thickness of the plates");
}

Finding no_room_on(const std::vector<std::string>& members,
                   const std::string& helps,
                   Subject subject) {
    return warning("panel_no_fasteners", std::move(subject),
                   "no fastener has room between it and " + listed(members) +
                       " with its edge distance and room for the tool",
                   helps + "a wider leg, or cleats");
}

Finding wide_pitch(Nm gap, Nm pitch, const engine::TapeStyle& shown, Subject subject) {
    Finding finding =
        warning("panel_pitch", std::move(subject),
                "its fasteners are up to " + length_in_words(Length::from_nm(gap), shown) +
                    " apart or from an end, since others are in the way; " +
                    length_in_words(Length::from_nm(pitch), shown) + " was asked for",
                "choose a wider pitch, a smaller rivet or fewer fasteners in the laps there");
    finding.severity = Severity::note;
    finding.numbers = {{"gap", Length::from_nm(gap)}, {"pitch", Length::from_nm(pitch)}};
    return finding;
}

}  // namespace model

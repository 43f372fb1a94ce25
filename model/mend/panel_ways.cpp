// What may be tried with panels, and with what refers to a bay.
#include "model/mend/ways.h"

#include <algorithm>
#include <set>
#include <string>
#include <utility>

namespace model {
namespace {

struct Stated {
    const Frame& frame;
    const Panel& panel;
};

void change(const Stated& it, Ways& ways, std::string name, std::string words, Panel panel) {
    if (panel == it.panel) return;
    ways.push_back(
        {std::move(name), std::move(words), {PutPanel{it.frame.name, std::move(panel), {}}}});
}

void other_fit(const Stated& it, Ways& ways) {
    Panel panel = it.panel;
    const bool is_inset = panel.fit == PanelFit::inset;
    panel.fit = is_inset ? PanelFit::overlay : PanelFit::inset;
    change(it, ways, "other fit",
           is_inset ? "Let it lie over the members (overlay)" : "Set it in between them (inset)",
           panel);
}

void usual_fastener(const Stated& it, Ways& ways) {
    Panel panel = it.panel;
    panel.fastener.clear();
    change(it, ways, "usual fastener", "Take the rivet by the shop's rule", panel);
}

void smaller_rivets(const Case& of, const Stated& it, Ways& ways) {
    for (auto at = of.catalogue().rivets.rbegin(); at != of.catalogue().rivets.rend(); ++at) {
        Panel panel = it.panel;
        panel.fastener = at->id;
        change(it, ways, "fastener " + at->id, "Take " + at->id, panel);
    }
}

void wider_pitch(const Case& of, const Stated& it, Ways& ways) {
    const auto gap = length_of(of.finding, "gap");
    if (!gap) return;
    Panel panel = it.panel;
    panel.pitch = words_of(of, engine::Length::from_nm(up_to_mark(of, gap->nm())));
    change(it, ways, "pitch", "Let fasteners be up to " + panel.pitch + " apart", panel);
}

// Known ones that the project uses already, then the usual ones of the shop and the catalogue.
std::vector<std::string> materials(const Case& of) {
    std::vector<std::string> names;
    const auto add = [&](const std::string& name) {
        const bool is_known = sheet_density_kg_m3(of.catalogue(), name).has_value();
        if (is_known && std::ranges::find(names, name) == names.end()) names.push_back(name);
    };
    for (const auto& frame : of.project().frames) {
        for (const auto& panel : frame.panels) add(panel.material);
    }
    add(of.project().shop.gusset_alloy);
    for (const auto& sheet : of.catalogue().sheet_materials) add(sheet.id);
    constexpr std::size_t most = 4;
    if (names.size() > most) names.resize(most);
    return names;
}

void known_material(const Case& of, const Stated& it, Ways& ways) {
    for (const auto& name : materials(of)) {
        Panel panel = it.panel;
        panel.material = name;
        change(it, ways, "material " + name, "Cut it from " + name, panel);
    }
}

void fewer_cut_outs(const Case& of, const Stated& it, Ways& ways) {
    for (std::size_t i = 0; i < it.panel.cut_outs.size(); ++i) {
        const auto& cut_out = it.panel.cut_outs[i];
        if (of.finding.what.find("\"" + cut_out.name + "\"") == std::string::npos) continue;
        Panel panel = it.panel;
        panel.cut_outs.erase(panel.cut_outs.begin() + static_cast<std::ptrdiff_t>(i));
        change(it, ways, "no cut-out", "Leave out cut-out \"" + cut_out.name + "\"", panel);
    }
}

// Another panel's thickness of the project: the sheet that is bought already.
void other_thickness(const Case& of, const Stated& it, Ways& ways) {
    std::set<std::string> seen;
    for (const auto& frame : of.project().frames) {
        for (const auto& other : frame.panels) {
            if (!seen.insert(other.thickness).second) continue;
            Panel panel = it.panel;
            panel.thickness = other.thickness;
            change(it, ways, "thickness " + other.thickness,
                   "Make it as thick as " + other.name + ": " + other.thickness, panel);
        }
    }
}

void ways_of(const Case& of, const Stated& it, Ways& ways) {
    const std::string& code = of.finding.code;
    if (code == "unknown_material") known_material(of, it, ways);
    if (code == "bad_cut_out") fewer_cut_outs(of, it, ways);
    if (code == "bad_panel") other_thickness(of, it, ways);
    if (code == "panel_pitch") wider_pitch(of, it, ways);
    if (code == "unknown_fastener" || code == "panel_is_riveted") usual_fastener(it, ways);
    if (code == "panel_no_fasteners" || code == "panel_pitch") smaller_rivets(of, it, ways);
    other_fit(it, ways);
}

}  // namespace

Ways other_panel(const Case& of) {
    Ways ways;
    for (const auto& subject : of.finding.concerns) {
        const auto* frame = frame_named(of, subject.frame);
        if (subject.kind != SubjectKind::panel || frame == nullptr) continue;
        const auto* panel = named(frame->panels, subject.name);
        if (panel != nullptr) ways_of(of, {*frame, *panel}, ways);
    }
    for (auto& way : take_out(of)) ways.push_back(std::move(way));
    return ways;
}

Ways other_bay(const Case& of) {
    Ways ways;
    constexpr std::size_t most = 4;
    for (const auto& subject : of.finding.concerns) {
        const auto* frame = frame_named(of, subject.frame);
        if (frame == nullptr) continue;
        for (std::size_t i = 0; i < frame->bays.size() && i < most; ++i) {
            const auto& bay = frame->bays[i].name;
            const std::string words = "Put it in bay " + bay;
            if (const auto* panel = named(frame->panels, subject.name);
                panel != nullptr && subject.kind == SubjectKind::panel) {
                Panel changed = *panel;
                changed.bay = bay;
                ways.push_back({"bay " + bay, words, {PutPanel{frame->name, changed, {}}}});
            }
            if (const auto* load = named(frame->loads, subject.name);
                load != nullptr && subject.kind == SubjectKind::load) {
                Load changed = *load;
                changed.where = bay;
                ways.push_back({"bay " + bay, words, {PutLoad{frame->name, changed, {}}}});
            }
        }
    }
    for (auto& way : take_out(of)) ways.push_back(std::move(way));
    return ways;
}

}  // namespace model

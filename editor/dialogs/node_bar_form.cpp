#include "editor/dialogs/node_bar_form.h"

#include "editor/by_name.h"
#include "editor/dialogs/form_line.h"
#include "editor/dialogs/node_bar_choices.h"
#include "editor/findings_about.h"
#include "editor/frame_nodes.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"
#include "editor/node_bars.h"
#include "editor/places/section_choice.h"
#include "model/room/resolve_in_room.h"

#include <algorithm>
#include <utility>

namespace editor {
namespace {

using model::BraceEnds;
using model::Diagonal;
using model::FaceSide;
using model::Leaning;
using model::Sense;

const model::Frame* frame_named(const std::string& name, const Derived& derived) {
    return by_name(derived.project->frames, name);
}

template <class Bar>
std::string free_name(const model::Frame& frame) {
    const std::string usual = NodeBarKind<Bar>::usual_name;
    std::string name = usual;
    for (int n = 2; is_taken(frame, name); ++n) name = usual + " " + std::to_string(n);
    return name;
}

// One step: a stock that is new to the project comes in with the bar.
template <class Bar>
Change change_for(const NodeBarForm<Bar>& form,
                  const Derived& derived,
                  const model::Catalogue& catalogue,
                  Bar bar) {
    Change change{.label = std::string(form.instead_of.empty() ? "Add " : "Change ") +
                           NodeBarKind<Bar>::word + " " + bar.name};
    if (!form.section.empty()) {
        const auto* frame = frame_named(form.frame, derived);
        const bool has_member = frame != nullptr && !frame->members.empty();
        auto stock = stock_of_section(*derived.project, catalogue, form.section,
                                      has_member ? frame->members.front().stock : std::string());
        if (stock.edit) change.edits.push_back(*std::move(stock.edit));
        bar.stock = stock.name;
    }
    change.edits.push_back(NodeBarKind<Bar>::put(form.frame, std::move(bar), form.instead_of));
    return change;
}

template <class Bar>
std::optional<std::string> reason_against(const NodeBarForm<Bar>& form,
                                          const Derived& derived,
                                          const Change& change) {
    const auto* frame = frame_named(form.frame, derived);
    const auto& name = form.bar.name;
    if (frame != nullptr && name != form.instead_of && is_taken(*frame, name)) {
        const auto word = node_bar_word(*frame, name);
        return "there is a " + std::string(word.empty() ? "member" : word) + " \"" + name +
               "\" already; choose another name";
    }
    const auto next = project_after(*derived.project, change);
    return next ? std::nullopt : std::optional(engine::to_text(next.error()));
}

template <class Bar>
std::optional<Change> tried_change(NodeBarForm<Bar>& form,
                                   const Derived& derived,
                                   const model::Catalogue& catalogue) {
    form.trouble.clear();
    auto change = change_for(form, derived, catalogue, form.bar);
    if (const auto reason = reason_against(form, derived, change)) {
        form.trouble = *reason;
        return std::nullopt;
    }
    return change;
}

// ---- what it would come to ----------------------------------------------------------------------

std::string words_of_piece(const model::Resolved& resolved,
                           model::Index piece,
                           const engine::TapeStyle& shown) {
    const int count = fasteners_through(resolved, piece);
    return size_words(resolved.pieces[piece], shown) + ", held by " + std::to_string(count) +
           (count == 1 ? " fastener" : " fasteners");
}

// Whatever its name is to be: half typed, it may be another one's.
template <class Bar>
NodeBarTrial<Bar> trial_of(const NodeBarForm<Bar>& form,
                           const Derived& derived,
                           const model::Catalogue& catalogue) {
    NodeBarTrial<Bar> trial{
        .of = worked_out_of(derived), .tried = form.bar, .section = form.section};
    const auto* frame = frame_named(form.frame, derived);
    if (frame == nullptr) return trial;
    auto bar = form.bar;
    bar.name = form.instead_of.empty() ? free_name<Bar>(*frame) : form.instead_of;
    const auto subject = subject_of(form.frame, bar);
    const auto next =
        project_after(*derived.project, change_for(form, derived, catalogue, std::move(bar)));
    if (!next) return trial;
    const auto resolved = model::resolve_in_room(*next, catalogue, *derived.scans);
    if (const auto piece = piece_of(*next, resolved, subject)) {
        trial.words = words_of_piece(resolved, *piece, next->shown);
    }
    const auto says_the_same = [&](const model::Finding& other) {
        return std::any_of(trial.findings.begin(), trial.findings.end(),
                           [&](const auto& told) { return told.what == other.what; });
    };
    for (const auto* finding : findings_about(resolved.findings, subject)) {
        if (!says_the_same(*finding)) trial.findings.push_back(*finding);
    }
    return trial;
}

template <class Bar>
bool is_current(const NodeBarForm<Bar>& form, const Derived& derived) {
    if (!form.trial || form.trial->of != worked_out_of(derived)) return false;
    auto tried = form.trial->tried;
    tried.name = form.bar.name;
    tried.note = form.bar.note;
    return tried == form.bar && form.trial->section == form.section;
}

template <class Bar>
void draw_trial(const NodeBarTrial<Bar>& trial) {
    if (!trial.words.empty()) {
        draw_wrapped(trial.words, Type::strong);
        log_item("comes to", trial.words);
    }
    for (const auto& finding : trial.findings) draw_form_finding(finding);
}

// ---- how it lies --------------------------------------------------------------------------------

void draw_way(Diagonal& diagonal, const Derived&, const model::Frame&, bool) {
    draw_radio_line<FaceSide>(
        "lies", diagonal.side,
        {{FaceSide::outside, "outside the members"}, {FaceSide::inside, "inside them"}});
    draw_radio_line<BraceEnds>(
        "its ends", diagonal.ends,
        {{BraceEnds::outline, "cut to the outline"}, {BraceEnds::square, "square"}});
}

std::array<const char*, 2> way_words(model::Axis axis) {
    switch (axis) {
        case model::Axis::x:
            return {"to the left", "to the right"};
        case model::Axis::y:
            return {"to the front", "to the back"};
        case model::Axis::z:
            return {"down", "up"};
    }
    return {};
}

// Between other nodes the leg points inward again until it is turned.
void draw_way(Leaning& leaning,
              const Derived& derived,
              const model::Frame& frame,
              bool is_elsewhere) {
    const auto across = across_run(derived, frame, {leaning.face, leaning.from, leaning.to});
    if (is_elsewhere) leaning.leg = across.inward;
    const auto words = way_words(across.axis);
    draw_radio_line<Sense>("its leg points", leaning.leg,
                           {{Sense::minus, words[0]}, {Sense::plus, words[1]}});
    draw_wrapped(
        "One leg lies along the face, behind those of the level members, and is riveted where it "
        "laps them; the other stands off it into the frame. Level members that end behind it are "
        "notched. Both ends are cut level, the saw turned by its lean.",
        Type::small, colour::quiet);
}

// ---- a new one ----------------------------------------------------------------------------------

// The back of a cabinet is braced most often.
std::optional<NodePair> usual_place(const Derived& derived,
                                    const model::Frame& frame,
                                    const Diagonal&) {
    std::optional<NodePair> place;
    std::optional<model::Axis> axis;
    for (const auto& face : faces_with_members(derived, frame)) {
        const auto pair = across_face(derived, frame, face);
        const auto its_axis = axis_of_plane(frame, face);
        if (!pair || (place && its_axis != axis)) continue;
        place = pair;
        axis = its_axis;
    }
    return place;
}

// A post of the back; the second one where the first is on the other side.
std::optional<NodePair> usual_place(const Derived& derived,
                                    const model::Frame& frame,
                                    const Leaning&) {
    if (frame.leaning.empty()) return along_back(derived, frame);
    const auto& last = frame.leaning.back();
    return NodePair{last.face, last.from, last.to};
}

template <class Bar>
bool is_there(const model::Frame& frame, const Bar& bar) {
    const auto& all = NodeBarKind<Bar>::all(frame);
    return std::any_of(all.begin(), all.end(), [&](const Bar& other) {
        return other.face == bar.face && ((other.from == bar.from && other.to == bar.to) ||
                                          (other.from == bar.to && other.to == bar.from));
    });
}

// Where one brace is, a second one crosses it.
void take_free_place(Diagonal& diagonal, const Derived&, const model::Frame& frame) {
    if (is_there(frame, diagonal)) turn_to_other_corners(diagonal.from, diagonal.to);
}

// Where one leans, the next one does so on another side of the frame.
void take_free_place(Leaning& leaning, const Derived& derived, const model::Frame& frame) {
    const auto axis = axis_of_plane(frame, leaning.face);
    auto other = leaning;
    for (const auto& face : faces_with_members(derived, frame)) {
        if (!is_there(frame, leaning)) return;
        other.face = face;
        if (axis_of_plane(frame, face) == axis && !is_there(frame, other)) leaning = other;
    }
}

void be_like_last(Diagonal& diagonal, const model::Frame& frame) {
    // Outside, nothing but the members' own faces is in its way.
    diagonal.side = FaceSide::outside;
    if (frame.diagonals.empty()) return;
    const auto& last = frame.diagonals.back();
    diagonal.stock = last.stock;
    diagonal.side = last.side;
    diagonal.ends = last.ends;
}

void be_like_last(Leaning& leaning, const model::Frame& frame) {
    if (!frame.leaning.empty()) leaning.stock = frame.leaning.back().stock;
}

void take_usual_way(Diagonal&, const Derived&, const model::Frame&) {}

void take_usual_way(Leaning& leaning, const Derived& derived, const model::Frame& frame) {
    leaning.leg = across_run(derived, frame, {leaning.face, leaning.from, leaning.to}).inward;
}

}  // namespace

template <class Bar>
NodeBarForm<Bar> node_bar_form(const std::string& frame, const Bar& bar) {
    return {.frame = frame, .instead_of = bar.name, .bar = bar};
}

template <class Bar>
NodeBarForm<Bar> new_node_bar_form(const Derived& derived,
                                   const model::Catalogue& catalogue,
                                   const std::string& frame,
                                   const Selection& selection) {
    NodeBarForm<Bar> form{.frame = frame};
    const auto* it = frame_named(frame, derived);
    if (it == nullptr) return form;
    auto& bar = form.bar;
    bar.name = free_name<Bar>(*it);
    be_like_last(bar, *it);
    if (bar.stock.empty()) choose_usual_stock(form, derived, catalogue);
    const auto chosen = between_chosen(*it, selection);
    if (const auto place = chosen ? chosen : usual_place(derived, *it, bar)) {
        bar.face = place->face;
        bar.from = place->from;
        bar.to = place->to;
        take_free_place(bar, derived, *it);
        take_usual_way(bar, derived, *it);
    }
    return form;
}

template <class Bar>
FormOutcome draw_node_bar_form(NodeBarForm<Bar>& form,
                               const Derived& derived,
                               const model::Catalogue& catalogue) {
    using Kind = NodeBarKind<Bar>;
    FormOutcome outcome;
    const bool is_new = form.instead_of.empty();
    const std::string word = Kind::word;
    const std::string title =
        (is_new ? "New " + word + " in " : "Change a " + word + " of ") + form.frame;
    const DialogScope dialog(Kind::dialog, title.c_str(), scaled(560), DialogScope::Fields::scroll);
    if (!dialog) return outcome;
    const bool is_choosing = is_choosing_for_node_bar();  // Enter and Escape belong to the list
    draw_form_line("name", form.bar.name, Kind::usual_name, form.is_fresh);
    const auto* frame = frame_named(form.frame, derived);
    const bool is_elsewhere = frame != nullptr && draw_place_choices(form.bar, derived, *frame);
    draw_stock_choice(form, derived, catalogue);
    if (frame != nullptr) draw_way(form.bar, derived, *frame, is_elsewhere);
    draw_form_line("note", form.bar.note, "what it is for");
    if (!is_current(form, derived)) form.trial = trial_of(form, derived, catalogue);
    draw_rule();
    draw_trial(*form.trial);
    const std::string removes = is_new ? "" : "Remove this " + word;
    const auto answer = draw_form_answers(
        form.trouble, {.verb = is_new ? "Add" : "Change",
                       .can_put = !form.bar.name.empty() && !form.bar.stock.empty(),
                       .is_choosing = is_choosing,
                       .removes = removes});
    if (answer.puts) outcome.change = tried_change(form, derived, catalogue);
    if (answer.removes) {
        outcome.change = change_of(Kind::remove(form.frame, form.instead_of));
        outcome.change->label = "Remove " + word + " " + form.instead_of;
    }
    outcome.is_cancelled = answer.is_cancelled;
    end_form(form.is_fresh, outcome);
    return outcome;
}

template BraceForm node_bar_form(const std::string&, const Diagonal&);
template LeaningForm node_bar_form(const std::string&, const Leaning&);
template BraceForm new_node_bar_form(const Derived&,
                                     const model::Catalogue&,
                                     const std::string&,
                                     const Selection&);
template LeaningForm new_node_bar_form(const Derived&,
                                       const model::Catalogue&,
                                       const std::string&,
                                       const Selection&);
template FormOutcome draw_node_bar_form(BraceForm&, const Derived&, const model::Catalogue&);
template FormOutcome draw_node_bar_form(LeaningForm&, const Derived&, const model::Catalogue&);

}  // namespace editor

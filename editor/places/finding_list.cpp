#include "editor/places/finding_list.h"

#include "editor/finding_groups.h"
#include "editor/kit/scopes.h"
#include "editor/kit/widgets.h"

#include <algorithm>
#include <utility>
#include <vector>

namespace editor {
namespace {

struct Shades {
    ImU32 ground;
    ImU32 edge;
    ImU32 text;
    const char* word;
};

Shades shades_of(model::Severity severity) {
    switch (severity) {
        case model::Severity::error:
            return {colour::red_ground, colour::red_edge, colour::red, "Wrong"};
        case model::Severity::warning:
            return {colour::amber_ground, colour::amber_edge, colour::amber, "Look at"};
        case model::Severity::note:
            break;
    }
    return {colour::note_ground, colour::line, colour::quiet, "Note"};
}

// "loose_end" is "loose end".
std::string words_of(std::string code) {
    std::replace(code.begin(), code.end(), '_', ' ');
    return code;
}

float height_of_wrapped(const std::string& text, Type type, float width) {
    const ImFont* face = font(type);
    return face->CalcTextSizeA(face->FontSize, 1.0e6F, width, text.c_str()).y;
}

void draw_card_text(
    ImDrawList& on, ImVec2 at, const std::string& text, Type type, ImU32 ink, float width) {
    const ImFont* face = font(type);
    on.AddText(face, face->FontSize, at, ink, text.c_str(), nullptr, width);
}

// Three paragraphs: what kind, where and what, and the mend.
struct CardText {
    std::string head;
    std::string what;
    std::string mend;
};

CardText text_of(const FindingGroup& group, const std::vector<model::Finding>& findings) {
    const auto& finding = findings[group.findings[0]];
    const std::string where = where_words(group, findings);
    return {std::string(shades_of(finding.severity).word) + ": " + words_of(finding.code),
            (where.empty() ? "" : where + " \xE2\x80\x94 ") + finding.what, finding.mend};
}

struct CardHeights {
    float head = 0.0F;
    float what = 0.0F;
    float mend = 0.0F;

    float whole() const { return head + what + mend + 2 * scaled(8); }
};

float room_in(float width) { return width - 2 * scaled(11); }

CardHeights heights_of(const CardText& text, float width) {
    const float room = room_in(width);
    return {height_of_wrapped(text.head, Type::strong, room) + scaled(2),
            height_of_wrapped(text.what, Type::small, room) + scaled(3),
            text.mend.empty() ? 0 : height_of_wrapped(text.mend, Type::small, room)};
}

// Gives whether it was clicked. `below`: room on the same ground for what it shows when open.
bool draw_card(const CardText& text,
               const Shades& shades,
               const std::string& name,
               bool is_chosen,
               float below) {
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x;
    const CardHeights heights = heights_of(text, width);
    const float room = room_in(width);
    const float x = at.x + (width - room) / 2;
    ImGui::InvisibleButton(name.c_str(), {width, heights.whole()});
    const bool hot = ImGui::IsItemHovered();
    const bool clicked = ImGui::IsItemClicked();
    log_item(name, text.head);
    ImDrawList& on = *ImGui::GetWindowDrawList();
    const ImVec2 end{at.x + width, at.y + heights.whole() + below};
    on.AddRectFilled(at, end, shades.ground, scaled(3));
    on.AddRect(at, end, is_chosen || hot ? colour::dye : shades.edge, scaled(3), 0,
               is_chosen ? scaled(2) : 1.0F);
    float y = at.y + scaled(8);
    draw_card_text(on, {x, y}, text.head, Type::strong, shades.text, room);
    y += heights.head;
    draw_card_text(on, {x, y}, text.what, Type::small, colour::ink, room);
    y += heights.what;
    draw_card_text(on, {x, y}, text.mend, Type::small, colour::dye, room);
    return clicked;
}

std::string key_of(const Derived& derived, std::size_t group) {
    const auto& finding = derived.findings[derived.finding_groups[group].findings[0]];
    return std::string(model::name_of(finding.severity)) + " " + finding.code + ": " +
           where_words(derived.finding_groups[group], derived.findings) + finding.what + "; " +
           finding.mend;
}

float unfolded_height(const FindingCards& cards, const std::string& key) {
    const auto at = cards.unfolded.find(key);
    return at == cards.unfolded.end() ? 0.0F : at->second;
}

void measure(FindingCards& cards, const Derived& derived, float width) {
    const float text_size = font(Type::small)->FontSize;
    if (cards.revision == derived.revision && cards.width == width &&
        cards.text_size == text_size && cards.measured == cards.unfolded) {
        return;
    }
    if (cards.revision != derived.revision) cards.floor = 0.0F;
    cards.revision = derived.revision;
    cards.width = width;
    cards.text_size = text_size;
    cards.measured = cards.unfolded;
    cards.tops = {0.0F};
    for (std::size_t i = 0; i < derived.finding_groups.size(); ++i) {
        const auto& group = derived.finding_groups[i];
        const float height = heights_of(text_of(group, derived.findings), width).whole() +
                             unfolded_height(cards, key_of(derived, i));
        cards.tops.push_back(cards.tops.back() + height + ImGui::GetStyle().ItemSpacing.y);
    }
}

// Those of which something shows, as first and end; only these are drawn, however many there are.
std::pair<std::size_t, std::size_t> shown_in(const FindingCards& cards, float from, float to) {
    const auto& tops = cards.tops;
    const auto first = std::upper_bound(tops.begin(), tops.end(), from);
    const auto end = std::lower_bound(tops.begin(), tops.end() - 1, to);
    const auto begin = first == tops.begin() ? first : first - 1;
    return {static_cast<std::size_t>(begin - tops.begin()),
            static_cast<std::size_t>(end - tops.begin())};
}

// Within the card, below its text.
std::optional<Change> draw_open_part(const std::string& name,
                                     const Derived& derived,
                                     std::size_t index,
                                     float& open_height,
                                     FindingHands hands) {
    const float width = ImGui::GetContentRegionAvail().x;
    const float room = room_in(width);
    const float inset = (width - room) / 2;
    const ImVec2 at = ImGui::GetCursorScreenPos();
    ImGui::SetCursorScreenPos({at.x + inset, at.y - ImGui::GetStyle().ItemSpacing.y});
    const float top = ImGui::GetCursorScreenPos().y;
    ImGui::Indent(inset);
    auto change = draw_finding_help(name, derived, index, hands, room);
    ImGui::Unindent(inset);
    open_height = ImGui::GetCursorScreenPos().y - top + scaled(4);
    return change;
}

// Opens it, or closes it where it is open; on the screen its top stays.
void turn_over(const std::string& key, float y, FindingCards& cards) {
    constexpr int frames_to_rest = 6;  // until what it shows is measured
    if (cards.unfolded.erase(key) == 0) cards.unfolded.emplace(key, 0.0F);
    const bool is_open = cards.unfolded.count(key) > 0;
    if (is_open) cards.open = key;
    if (!is_open && cards.open == key) cards.open.clear();
    cards.held = HeldCard{key, y, frames_to_rest};
}

std::optional<Change> draw_one(const Derived& derived,
                               std::size_t index,
                               FindingCards& cards,
                               Selection& selection,
                               FindingHands hands) {
    const auto& group = derived.finding_groups[index];
    const Shades shades = shades_of(derived.findings[group.findings[0]].severity);
    const bool is_chosen = !group.concerns.empty() && selection.subjects == group.concerns;
    const auto key = key_of(derived, index);
    const auto unfolded = cards.unfolded.find(key);
    const bool is_open = unfolded != cards.unfolded.end();
    const std::string name = "finding " + std::to_string(index + 1);
    const float y = ImGui::GetCursorScreenPos().y;
    if (draw_card(text_of(group, derived.findings), shades, name, is_chosen,
                  is_open ? unfolded->second : 0.0F)) {
        selection = selection_of_subjects(*derived.project, derived.resolved, group.concerns);
        turn_over(key, y, cards);
        return std::nullopt;
    }
    if (!is_open) return std::nullopt;
    return draw_open_part(name, derived, index, unfolded->second, hands);
}

// The open card's top comes to the top of what shows.
void scroll_to_open(const Derived& derived, FindingCards& cards, float list_top) {
    if (!std::exchange(cards.wants_open, false)) return;
    const auto open = open_group(derived, cards);
    if (open) ImGui::SetScrollY(list_top + cards.tops[*open]);
}

std::optional<std::size_t> group_of(const Derived& derived, const std::string& key) {
    if (key.empty()) return std::nullopt;
    for (std::size_t i = 0; i < derived.finding_groups.size(); ++i) {
        if (key_of(derived, i) == key) return i;
    }
    return std::nullopt;
}

// By how much the list is scrolled too little for the card that is held; this frame draws it where
// it will be, the next one is scrolled.
float held_scroll(const Derived& derived, FindingCards& cards, float list_y) {
    auto& held = cards.held;
    if (!held) return 0.0F;
    const auto group = group_of(derived, held->key);
    const bool is_over = held->frames-- <= 0 || ImGui::GetIO().MouseWheel != 0.0F;
    if (!group || is_over) {
        held.reset();
        return 0.0F;
    }
    const float wanted = ImGui::GetScrollY() + list_y + cards.tops[*group] - held->y;
    const float scroll = std::max(0.0F, wanted);
    cards.floor = std::max(cards.floor, scroll);
    const float by = scroll - ImGui::GetScrollY();
    if (by != 0.0F) ImGui::SetScrollY(scroll);
    return by;
}

// The scroll bar measures all of them, and what is left free behind the last one.
void end_list(FindingCards& cards, float list_x, float list_y, float scrolled_by) {
    const float scroll = ImGui::GetScrollY() + scrolled_by;
    cards.floor = std::min(cards.floor, scroll);
    const float foot = ImGui::GetWindowPos().y + ImGui::GetWindowHeight() -
                       ImGui::GetStyle().WindowPadding.y + scrolled_by;
    const float end = list_y + cards.tops.back();
    ImGui::SetCursorScreenPos({list_x, cards.floor > 0.0F ? std::max(end, foot) : end});
    ImGui::Dummy({0, 0});
}

}  // namespace

SeverityWord word_of(model::Severity severity) {
    const Shades shades = shades_of(severity);
    return {shades.word, shades.text};
}

std::optional<Change> draw_finding(const Derived& derived,
                                   std::size_t group,
                                   Selection& selection,
                                   float& open_height,
                                   FindingHands hands) {
    const auto& it = derived.finding_groups[group];
    const bool is_chosen = !it.concerns.empty() && selection.subjects == it.concerns;
    const Shades shades = shades_of(derived.findings[it.findings[0]].severity);
    const std::string name = "finding " + std::to_string(group + 1);
    if (draw_card(text_of(it, derived.findings), shades, name, is_chosen, open_height))
        selection = selection_of_subjects(*derived.project, derived.resolved, it.concerns);
    return draw_open_part(name, derived, group, open_height, hands);
}

float height_of_finding(const Derived& derived, std::size_t group, float width) {
    return heights_of(text_of(derived.finding_groups[group], derived.findings), width).whole();
}

std::optional<std::size_t> open_group(const Derived& derived, const FindingCards& cards) {
    return group_of(derived, cards.open);
}

bool open_next(const Derived& derived, FindingCards& cards) {
    const auto count = derived.finding_groups.size();
    if (count == 0) return false;
    const auto open = open_group(derived, cards);
    cards.open = key_of(derived, open ? (*open + 1) % count : 0);
    cards.unfolded = {{cards.open, 0.0F}};
    cards.held.reset();
    cards.wants_open = true;
    return true;
}

std::optional<Change> draw_finding_list(const Derived& derived,
                                        FindingCards& cards,
                                        Selection& selection,
                                        FindingHands hands) {
    std::optional<Change> change;
    if (derived.findings.empty()) {
        draw_text("Nothing to mend", Type::small, colour::quiet);
        return change;
    }
    if (std::exchange(cards.wants_top, false)) ImGui::SetScrollY(0.0F);
    measure(cards, derived, ImGui::GetContentRegionAvail().x);
    scroll_to_open(derived, cards, ImGui::GetCursorPosY());
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float by = held_scroll(derived, cards, at.y);
    const ImDrawList& on = *ImGui::GetWindowDrawList();
    const float top = at.y - by;
    const auto [first, end] =
        shown_in(cards, on.GetClipRectMin().y - top, on.GetClipRectMax().y - top);
    for (std::size_t i = first; i < end; ++i) {
        ImGui::SetCursorScreenPos({at.x, top + cards.tops[i]});
        keep_first(change, draw_one(derived, i, cards, selection, hands));
    }
    end_list(cards, at.x, at.y, by);
    return change;
}

FindingsHeight height_of_findings(const Derived& derived, FindingCards& cards, float width) {
    if (derived.findings.empty()) {
        const float line = ImGui::GetTextLineHeightWithSpacing();
        return {line, line};
    }
    measure(cards, derived, width);
    FindingsHeight height{cards.tops.back(), cards.tops.back()};
    if (cards.unfolded.empty()) return height;
    for (std::size_t i = 0; i < derived.finding_groups.size(); ++i)
        height.folded -= unfolded_height(cards, key_of(derived, i));
    return height;
}

}  // namespace editor

#include "editor/dialogs/trade_words_page.h"

#include "editor/keys.h"
#include "editor/kit/scopes.h"
#include "editor/kit/term.h"
#include "editor/kit/widgets.h"

#include <algorithm>
#include <string>

namespace editor {
namespace {

void move_choice(TradeWords& page, std::size_t count) {
    if (count == 0) return;
    if (is_pressed(key::down, true)) page.chosen = (page.chosen + 1) % count;
    if (is_pressed(key::up, true)) page.chosen = (page.chosen + count - 1) % count;
    page.chosen = std::min(page.chosen, count - 1);
}

void draw_list(TradeWords& page, const std::vector<std::size_t>& found, bool has_moved) {
    const ChildScope list("words list", {scaled(180), scaled(330)});
    for (std::size_t i = 0; i < found.size(); ++i) {
        const std::string word(trade_words()[found[i]].word);
        const bool is_chosen = i == page.chosen;
        if (draw_row("word " + word, word, is_chosen).clicked) page.chosen = i;
        if (is_chosen && has_moved) ImGui::SetScrollHereY();
    }
    if (found.empty()) draw_text("No such word", colour::quiet);
}

}  // namespace

bool draw_trade_words(TradeWords& page) {
    const DialogScope dialog("Words", "Words of the trade", scaled(620));
    if (!dialog) return false;
    const auto field = draw_field("words", page.words,
                                  {.hint = "a word, or one of what it is about: corner, hole, saw",
                                   .wants_focus = page.is_fresh});
    page.is_fresh = false;
    if (field.changed) page.chosen = 0;
    const auto found = found_trade_words(page.words);
    const auto before = page.chosen;
    move_choice(page, found.size());
    draw_list(page, found, before != page.chosen);
    ImGui::SameLine(0, scaled(18));
    {
        const ChildScope shown("shown", {0, scaled(330)});
        if (page.chosen < found.size()) {
            const auto& word = trade_words()[found[page.chosen]];
            draw_trade_word(word, std::min(scaled(360), ImGui::GetContentRegionAvail().x));
            log_item("shown word", word.word);
        }
    }
    const bool is_done =
        draw_button("Close", {.weight = Weight::main}) || field.entered || is_pressed(key::escape);
    if (is_done) ImGui::CloseCurrentPopup();
    return is_done;
}

}  // namespace editor

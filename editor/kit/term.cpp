#include "editor/kit/term.h"

#include "editor/kit/hover_help.h"
#include "editor/kit/scopes.h"
#include "editor/kit/trade_pictures.h"
#include "editor/kit/widgets.h"

#include <string>

namespace editor {
namespace {

void draw_dots(ImVec2 from, float to) {
    ImDrawList& on = *ImGui::GetWindowDrawList();
    const float step = scaled(4);
    const float size = scaled(1.2F);
    for (float x = from.x; x + size <= to; x += step) {
        on.AddRectFilled({x, from.y}, {x + size, from.y + size}, colour::faint);
    }
}

ImVec2 size_of_trade_word(const TradeWord& word, float width) {
    const float spacing = ImGui::GetStyle().ItemSpacing.y;
    float height =
        ImGui::GetTextLineHeight() + spacing + size_of_text(word.what, Type::text, width).y;
    if (word.picture != TermPicture::none) height += spacing + height_of_trade_picture(width);
    return {width, height};
}

void explain_while_hovered(const TradeWord& word) {
    if (!has_rested_on_item()) return;
    const StyleScope padding(ImGuiStyleVar_WindowPadding, scaled(12, 9));
    const float width = scaled(240);
    const HelpScope help(size_of_trade_word(word, width));
    const FontScope plain(Type::text);
    draw_trade_word(word, width);
    log_item("explained", word.word);
}

}  // namespace

void draw_trade_word(const TradeWord& word, float width) {
    draw_text(word.word, Type::strong);
    const ImVec2 text = size_of_text(word.what, Type::text, width);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    draw_wrapped_at(*ImGui::GetWindowDrawList(), at, word.what, Type::text, colour::ink, width);
    ImGui::Dummy({width, text.y});
    if (word.picture == TermPicture::none) return;
    const ImVec2 below = ImGui::GetCursorScreenPos();
    draw_trade_picture(*ImGui::GetWindowDrawList(), below, width, word);
    ImGui::Dummy({width, height_of_trade_picture(width)});
}

void explain_term(std::string_view label) {
    const auto* word = trade_word_in(label);
    if (word == nullptr) return;
    log_item("term " + std::string(label), word->word);
    const ImVec2 least = ImGui::GetItemRectMin();
    const ImVec2 most = ImGui::GetItemRectMax();
    draw_dots({least.x, most.y - scaled(1)}, most.x);
    explain_while_hovered(*word);
}

void draw_term_headings() {
    ImGui::TableNextRow(ImGuiTableRowFlags_Headers);
    for (int i = 0; i < ImGui::TableGetColumnCount(); ++i) {
        if (!ImGui::TableSetColumnIndex(i)) continue;
        const IdScope id(i);
        const std::string name = ImGui::TableGetColumnName(i);
        ImGui::TableHeader(name.c_str());
        const auto* word = trade_word_in(name);
        if (word == nullptr) continue;
        const ImVec2 least = ImGui::GetItemRectMin();
        const ImVec2 most = ImGui::GetItemRectMax();
        log_item("term " + name, word->word);
        draw_dots({least.x + ImGui::GetStyle().CellPadding.x, most.y - scaled(1)},
                  least.x + ImGui::CalcTextSize(name.c_str()).x);
        explain_while_hovered(*word);
    }
}

void draw_term(std::string_view label, ImU32 packed) { draw_term(label, Type::text, packed); }

void draw_term(std::string_view label, Type type, ImU32 packed) {
    draw_text(label, type, packed);
    explain_term(label);
}

}  // namespace editor

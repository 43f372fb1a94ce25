#include "editor/kit/trade_words.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <string>

namespace editor {
namespace {

// The sentences are our own.
constexpr std::array table{
    TradeWord{"bay",
              "A box of room between planes that belongs to the cabinet: a drawer or a fridge goes "
              "into one. It also tells which side of a member is inside.",
              TermPicture::bay},
    TradeWord{"cleat",
              "A short piece of angle in a corner: one leg is fastened to each of two members that "
              "meet there.",
              TermPicture::cleat},
    TradeWord{"cope",
              "To notch the end of a member, so that one of its legs can run on past what the "
              "other one stops at.",
              TermPicture::cope, "coped"},
    TradeWord{"datum end",
              "The end of a piece from which all its holes are measured. Turn the piece as the "
              "list says before you hook the tape.",
              TermPicture::datum_end, "datum"},
    TradeWord{"edge distance",
              "From the middle of a hole to the edge of its plate. With too little of it the "
              "fastener tears out; two diameters are usual.",
              TermPicture::edge_distance},
    TradeWord{"end trim",
              "What is cut off each end of a bar as it comes from the mill, so that the first cut "
              "starts square and clean.",
              TermPicture::end_trim, "off each end"},
    TradeWord{"gauge",
              "From the heel of a leg to the middle of a hole, across the leg: to this the fence "
              "of the drill press is set.",
              TermPicture::gauge, "fence"},
    TradeWord{"grip",
              "The thickness of metal that a rivet can hold, from the least to the most. What it "
              "is set through has to lie between the two.",
              TermPicture::grip},
    TradeWord{"gusset", "A plate of sheet over a corner, fastened to both members that meet there.",
              TermPicture::gusset},
    TradeWord{"heel", "The outer corner of an angle, where its two legs meet.", TermPicture::angle},
    TradeWord{"kerf",
              "The width that the saw blade turns into chips with every cut. Each cut takes that "
              "much off the bar.",
              TermPicture::kerf},
    TradeWord{"lap",
              "Where two members lie face to face over each other: there the fasteners go through "
              "both.",
              TermPicture::lap},
    TradeWord{"layout plane",
              "A flat, named place in the cabinet, such as the front or a shelf. Members stand on "
              "planes: move the plane, and all that stands on it follows.",
              TermPicture::plane},
    TradeWord{"leg", "One of the two flat sides of an angle.", TermPicture::angle},
    TradeWord{"mark",
              "The short name written on a piece, such as A1. Pieces that are alike share one, so "
              "any of them fits any place of that mark."},
    TradeWord{"match-drill",
              "To drill a hole through the hole that its mate already has, with both held "
              "together, instead of by measure: so the two are sure to meet."},
    TradeWord{"member",
              "One bar of the skeleton on the line where two planes meet: a post, a rail. It may "
              "be cut into more than one piece."},
    TradeWord{"mitre",
              "A corner where both ends are cut aslant, each by half of the angle between them.",
              TermPicture::mitre},
    TradeWord{"offcut",
              "What is left of a bar when its pieces are cut. Long ones are kept for the next "
              "job."},
    TradeWord{"opposite hand",
              "The mirror image of a piece, as a left shoe is of a right one. The numbers are the "
              "same; it lies the other way round on the bench.",
              TermPicture::opposite_hand, "hand"},
    TradeWord{"pilot",
              "A small hole drilled first, that leads a larger drill or is drilled up once the "
              "parts lie together."},
    TradeWord{"pitch",
              "From the middle of one hole to the middle of the next in a row. Three diameters are "
              "the least.",
              TermPicture::pitch},
    TradeWord{"root", "The inner corner of an angle, where its two legs meet; it may be rounded.",
              TermPicture::angle},
    TradeWord{"shim",
              "A thin piece of sheet that fills a gap between two faces, so that they can "
              "be drawn tight.",
              TermPicture::shim},
    TradeWord{"splice",
              "Two lengths of bar joined end to end, with a backing piece behind the butt that is "
              "fastened to both.",
              TermPicture::splice},
    TradeWord{"square",
              "With all corners at a right angle. A frame is so when both its diagonals measure "
              "the same.",
              TermPicture::square},
    TradeWord{"stack",
              "All the plates that one fastener goes through, taken together: their thickness has "
              "to lie within its grip.",
              TermPicture::grip},
    TradeWord{"strap",
              "A short piece of flat bar that lies across two members where they meet and is "
              "fastened to both.",
              TermPicture::strap},
    TradeWord{"tap drill",
              "The drill that makes the hole in which a thread is then cut. It is smaller than the "
              "screw by the depth of the thread."},
    TradeWord{"temporary pin",
              "A spring pin that holds parts together through their rivet holes for the dry fit "
              "and is taken out again before the rivet is set."},
    TradeWord{"toe", "The free edge of a leg, away from the heel.", TermPicture::angle},
};

std::string lower(std::string_view text) {
    std::string small(text);
    for (char& c : small) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    return small;
}

bool is_letter(char c) { return std::isalpha(static_cast<unsigned char>(c)) != 0; }

// Whole: neither letter before it nor behind it, but for an "s".
bool holds_whole(const std::string& text, std::string_view word) {
    for (auto at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) {
        auto end = at + word.size();
        if (end < text.size() && text[end] == 's') ++end;
        const bool begins = at == 0 || !is_letter(text[at - 1]);
        if (begins && (end >= text.size() || !is_letter(text[end]))) return true;
    }
    return false;
}

bool holds_all(const std::string& text, std::string_view words) {
    while (!words.empty()) {
        const auto end = std::min(words.find(' '), words.size());
        if (text.find(words.substr(0, end)) == std::string::npos) return false;
        words.remove_prefix(std::min(end + 1, words.size()));
    }
    return true;
}

}  // namespace

std::span<const TradeWord> trade_words() { return table; }

const TradeWord* trade_word(std::string_view word) {
    const auto at = std::find_if(table.begin(), table.end(),
                                 [&](const TradeWord& it) { return it.word == word; });
    return at == table.end() ? nullptr : &*at;
}

const TradeWord* trade_word_in(std::string_view label) {
    const auto text = lower(label);
    const TradeWord* found = nullptr;
    for (const auto& it : table) {
        if (found != nullptr && it.word.size() <= found->word.size()) continue;
        const bool is_said = !it.also.empty() && holds_whole(text, it.also);
        if (is_said || holds_whole(text, it.word)) found = &it;
    }
    return found;
}

std::vector<std::size_t> found_trade_words(std::string_view words) {
    const auto wanted = lower(words);
    std::vector<std::size_t> in_name;
    std::vector<std::size_t> in_sentence;
    for (std::size_t i = 0; i < table.size(); ++i) {
        if (holds_all(std::string(table[i].word), wanted)) {
            in_name.push_back(i);
        } else if (holds_all(lower(table[i].what), wanted)) {
            in_sentence.push_back(i);
        }
    }
    in_name.insert(in_name.end(), in_sentence.begin(), in_sentence.end());
    return in_name;
}

}  // namespace editor

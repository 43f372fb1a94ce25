#include "model/resolve/mark_names.h"

#include <array>
#include <cstddef>
#include <unordered_map>

namespace model {
namespace {

// I and O read as digits and S is for shims: left out of drawings' letters, common practice.
constexpr std::string_view letters = "ABCDEFGHJKLMNPQRTUVWXYZ";

constexpr std::size_t kind_count = 10;

std::string letters_for(Index stock) {
    std::string text;
    for (Index n = stock + 1; n > 0; n = (n - 1) / static_cast<Index>(letters.size())) {
        text.insert(text.begin(), letters[(n - 1) % letters.size()]);
    }
    return text;
}

// The number that each member has among the members of stock alike, over all frames, from 1.
std::vector<std::vector<Index>> member_numbers(const Project& project,
                                               const std::vector<Index>& stocks_alike) {
    std::unordered_map<std::string_view, Index> stock_of_name;
    for (Index i = 0; i < project.stock.size(); ++i) {
        stock_of_name.try_emplace(project.stock[i].name, stocks_alike[i]);
    }
    std::unordered_map<Index, Index> count;
    std::vector<std::vector<Index>> numbers(project.frames.size());
    for (std::size_t f = 0; f < project.frames.size(); ++f) {
        numbers[f].reserve(project.frames[f].members.size());
        for (const auto& member : project.frames[f].members) {
            const auto stock = stock_of_name.find(member.stock);
            const bool is_known = stock != stock_of_name.end();
            numbers[f].push_back(++count[is_known ? stock->second : no_index]);
        }
    }
    return numbers;
}

// The number that each piece has among the pieces of its kind, from 1.
std::vector<Index> part_numbers(const Resolved& resolved) {
    std::vector<Index> numbers;
    std::array<Index, kind_count> count{};
    for (Index i = 0; i < resolved.pieces.size(); ++i) {
        const auto kind = resolved.pieces[i].kind;
        if (kind == PieceKind::bar) continue;
        if (numbers.empty()) numbers.resize(resolved.pieces.size());
        numbers[i] = ++count[static_cast<std::size_t>(kind)];
    }
    return numbers;
}

}  // namespace

std::string_view mark_letters(PieceKind kind) {
    constexpr std::array<std::string_view, kind_count> of_kind{"",   "BR", "LN", "CL", "ST",
                                                               "BK", "FT", "S",  "GU", "PN"};
    static_assert(static_cast<std::size_t>(PieceKind::panel) == kind_count - 1);
    return of_kind[static_cast<std::size_t>(kind)];
}

MarkNames::MarkNames(const Project& project,
                     const Resolved& resolved,
                     const std::vector<Index>& stocks_alike)
    : resolved_{resolved},
      member_numbers_{member_numbers(project, stocks_alike)},
      part_numbers_{part_numbers(resolved)} {}

std::string MarkNames::next(Index index, Index stock_alike) {
    const auto& piece = resolved_.pieces[index];
    if (piece.kind == PieceKind::shim) return "S" + std::to_string(++shim_marks_);
    std::string name;
    if (piece.kind == PieceKind::bar) {
        name =
            letters_for(stock_alike) + std::to_string(member_numbers_[piece.frame][piece.member]);
        for (Index part = piece.part; part > 0; part /= 26) {
            name += static_cast<char>('a' + part % 26);
        }
    } else {
        name = std::string(mark_letters(piece.kind)) + std::to_string(part_numbers_[index]);
    }
    // Two members of one name cannot both be the first of their kind; their parts can.
    while (!given_.insert(name).second) name += '\'';
    return name;
}

}  // namespace model

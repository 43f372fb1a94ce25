// A set of the pieces of one frame, by their numbers in FrameParts. Only files of this folder use
// it.
#pragma once

#include "model/resolve/resolved.h"

#include <bit>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace model {

class PieceSet {
public:
    PieceSet() = default;
    explicit PieceSet(std::size_t pieces) : words_((pieces + 63) / 64) {}

    void insert(Index piece) { words_[piece / 64] |= bit(piece); }
    void erase(Index piece) { words_[piece / 64] &= ~bit(piece); }
    bool contains(Index piece) const { return (words_[piece / 64] & bit(piece)) != 0; }

    PieceSet& operator|=(const PieceSet& other) {
        for (std::size_t i = 0; i < words_.size(); ++i) words_[i] |= other.words_[i];
        return *this;
    }
    PieceSet& operator&=(const PieceSet& other) {
        for (std::size_t i = 0; i < words_.size(); ++i) words_[i] &= other.words_[i];
        return *this;
    }
    PieceSet& operator-=(const PieceSet& other) {
        for (std::size_t i = 0; i < words_.size(); ++i) words_[i] &= ~other.words_[i];
        return *this;
    }

    bool meets(const PieceSet& other) const {
        for (std::size_t i = 0; i < words_.size(); ++i) {
            if ((words_[i] & other.words_[i]) != 0) return true;
        }
        return false;
    }
    // Whether they share a piece that is not in `apart`.
    bool meets_beside(const PieceSet& other, const PieceSet& apart) const {
        for (std::size_t i = 0; i < words_.size(); ++i) {
            if ((words_[i] & other.words_[i] & ~apart.words_[i]) != 0) return true;
        }
        return false;
    }
    bool is_within(const PieceSet& other) const {
        for (std::size_t i = 0; i < words_.size(); ++i) {
            if ((words_[i] & ~other.words_[i]) != 0) return false;
        }
        return true;
    }
    std::size_t size() const {
        std::size_t count = 0;
        for (const auto word : words_) count += static_cast<std::size_t>(std::popcount(word));
        return count;
    }

    // In rising order, those that are in `other` too. Visiting may take pieces out of `other`: of
    // such some may still be visited.
    template <class Visit>
    void for_each_shared(const PieceSet& other, Visit visit) const {
        for (std::size_t i = 0; i < words_.size(); ++i) {
            for (auto word = words_[i] & other.words_[i]; word != 0; word &= word - 1) {
                visit(
                    static_cast<Index>(i * 64 + static_cast<std::size_t>(std::countr_zero(word))));
            }
        }
    }

    // In rising order.
    template <class Visit>
    void for_each(Visit visit) const {
        for (std::size_t i = 0; i < words_.size(); ++i) {
            for (auto word = words_[i]; word != 0; word &= word - 1) {
                visit(
                    static_cast<Index>(i * 64 + static_cast<std::size_t>(std::countr_zero(word))));
            }
        }
    }
    std::vector<Index> list() const {
        std::vector<Index> pieces;
        for_each([&](Index piece) { pieces.push_back(piece); });
        return pieces;
    }

    bool operator==(const PieceSet&) const = default;

private:
    static std::uint64_t bit(Index piece) { return std::uint64_t{1} << (piece % 64U); }

    std::vector<std::uint64_t> words_;
};

}  // namespace model

// The sheets that pages are printed on.
#pragma once

#include <optional>
#include <string_view>

namespace engine {

enum class Paper { a4, a3, letter, tabloid };

enum class PaperTurn { portrait, landscape };

// mm.
struct PaperSize {
    double width = 0;
    double height = 0;

    bool operator==(const PaperSize&) const = default;
};

PaperSize paper_size(Paper paper, PaperTurn turn = PaperTurn::portrait);

// "a4", "a3", "letter", "tabloid": as typed on the command line.
std::string_view name_of(Paper paper);

// The paper of a name, in any case of its letters. No value: there is none of that name.
std::optional<Paper> paper_named(std::string_view name);

}  // namespace engine

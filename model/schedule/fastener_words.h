// The words by which schedules name fasteners and their sizes, as on the maker's box.
#pragma once

#include "model/catalogue/catalogue.h"
#include "model/resolve/resolved.h"

#include <string>
#include <vector>

namespace model {

// A size in its own system of measure: "1/8 in", "0.164 in", "4 mm".
std::string size_text(engine::Length size, MeasureSystem system);

struct FastenerWords {
    std::string label;           // "blind rivet 1/8, grip 4-4", "machine screw 8-32 x 1/2 in"
    std::string diameter;        // "1/8 in"
    std::string grip_or_length;  // "3/16 in to 1/4 in", "1/2 in"
};

FastenerWords fastener_words(const Catalogue& catalogue, const FastenerSpec& spec);

// The different fasteners in use, each put into words once.
class FastenersInUse {
public:
    FastenersInUse(const Catalogue& catalogue, const Resolved& resolved);

    const std::vector<FastenerSpec>& specs() const { return specs_; }  // in order of catalogue
    const FastenerWords& words(std::size_t spec) const { return words_[spec]; }
    std::size_t spec_of(Index fastener) const { return spec_of_[fastener]; }
    const std::string& label_of(Index fastener) const { return words_[spec_of_[fastener]].label; }

private:
    std::vector<FastenerSpec> specs_;
    std::vector<FastenerWords> words_;
    std::vector<std::uint32_t> spec_of_;  // by fastener
};

}  // namespace model

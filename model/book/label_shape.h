// Words broken into lines so that they fill a box that is wide and low, or narrow and high.
#pragma once

#include "model/book/free_place.h"
#include "model/book/strip_labels.h"

#include <functional>
#include <string>
#include <vector>

namespace model {

struct LabelWords {
    std::vector<std::string> paragraphs;  // each on lines of its own,
    const char* between = ", ";           // or all in one line with this between
    engine::LetterWeight weight = engine::LetterWeight::regular;
    LabelArrow arrow = LabelArrow::none;
};

struct LabelShape {
    std::vector<std::string> lines;
    double size = 0.0;
    bool is_turned = false;
    BoxSize box;  // as it lies on paper
};

// Offers shapes until one is taken, which it tells: all in the first two sizes before any in the
// smaller ones, then whole paragraphs before broken ones, level before turned, large letters before
// small. No word is broken within itself.
bool offer_shapes(const LabelWords& words,
                  const std::vector<double>& sizes,
                  const std::function<bool(const LabelShape&)>& is_taken);

// Level, in a given width, in which words are broken where they must be.
LabelShape label_in_width(const LabelWords& words, double size, double width);

}  // namespace model

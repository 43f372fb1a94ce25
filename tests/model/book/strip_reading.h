// Papers of drill strips as a reader finds them in the page stream of the file.
#pragma once

#include "model/book/drill_strips.h"
#include "model/book/mark_facts.h"

#include "tests/model/book/printed_sample.h"
#include "tests/model/book/texts_on_page.h"

#include <algorithm>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace tests {

struct ReadCross {
    double x = 0;
    double y = 0;
};

struct ReadBox {
    double left = 0;
    double top = 0;
    double right = 0;
    double bottom = 0;

    bool holds(const ReadCross& at) const {
        return at.x > left && at.x < right && at.y > top && at.y < bottom;
    }
};

// What is stroked on a page of the file, as mutool finds it in its stream; mm.
struct ReadPage {
    std::vector<ReadBox> boxes;
    std::vector<ReadCross> crosses;    // arms of 4 mm: holes
    std::vector<ReadCross> registers;  // arms of 2.5 mm
    std::vector<ReadBox> uprights;     // lines down
    std::vector<ReadBox> levels;       // lines across
};

ReadPage read_page(const std::filesystem::path& pdf,
                   int number,
                   const model::PrinterScale& printer);

struct ReadLeg {
    std::string name;
    double heel = 0;  // places on the sheet
    double toe = 0;

    bool holds(double x) const { return x > std::min(heel, toe) && x < std::max(heel, toe); }
};

struct ReadStrip {
    ReadBox paper;
    double from = 0;  // mm from the datum end at its upper edge
    std::vector<ReadLeg> legs;
};

// The strip over which that name stands; none where there is no paper below it.
std::optional<ReadStrip> strip_below(const TextOnPage& name,
                                     const model::MarkFacts& facts,
                                     const PrintedSample& sample,
                                     const ReadPage& page,
                                     const std::vector<TextOnPage>& texts,
                                     const model::PrinterScale& printer);

bool is_near_on_paper(double a, double b, double by = 0.01);  // mm

}  // namespace tests

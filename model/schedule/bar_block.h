// One bar on paper: a line of words, the bar to scale with the running position of the stop, and a
// box to tick for each cut.
#pragma once

#include "engine/drawing/page.h"
#include "model/schedule/saw_bars.h"

#include <string>
#include <vector>

namespace model {

struct BarScale {
    engine::Length longest;       // takes the whole width
    double width = 0.0;           // mm
    engine::Length least_offcut;  // shorter ones are scrap
};

class BarBlock {
public:
    BarBlock(const Project& project, const SawBar& bar, const BarScale& scale);

    double height() const;  // mm
    void draw(engine::Page& page, engine::PagePoint at) const;

private:
    struct Tick {
        double x = 0.0;
        int line = 0;
        bool is_made = false;
        bool has_box = true;  // a spoiled piece is ticked no more
        std::string text;
    };

    double mm_of(engine::Length length) const;
    std::string where_from() const;
    void lay_ticks();
    void draw_words(engine::Page& page, engine::PagePoint at) const;
    void draw_bar(engine::Page& page, engine::PagePoint at) const;
    void draw_positions(engine::Page& page, engine::PagePoint at) const;
    void draw_ticks(engine::Page& page, engine::PagePoint at) const;

    const Project& project_;
    const SawBar& bar_;
    BarScale scale_;
    std::vector<Tick> ticks_;
    int lines_ = 0;
};

}  // namespace model

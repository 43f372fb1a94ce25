// What a corner's words say of its picture is drawn there.
#include "model/book/corner_view.h"

#include "model/book/corner_section.h"

#include "tests/model/book/book_job.h"
#include "tests/model/book/texts_on_page.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <sstream>
#include <string>

using model::Index;

TEST_CASE("every distance that a corner has as drawn stands in its picture",
          "[model][book][samples]") {
    const std::string as_drawn = "; as drawn here ";
    std::size_t looked_at = 0;
    std::size_t not_shown = 0;
    for (const auto& name : tests::sample_names()) {
        CAPTURE(name);
        const auto project = tests::sample(name);
        const auto resolved = model::resolve(project, tests::book_catalogue());
        for (const auto& kind : model::corner_kinds(project, tests::book_catalogue(), resolved)) {
            const Index joint = kind.joints.front();
            engine::Page page({200.0, 200.0});
            model::draw_corner_section(page, {40.0, 40.0, 100.0, 100.0}, project,
                                       tests::book_catalogue(), resolved, joint);
            const auto texts = tests::texts_on(page);
            const auto drawn = model::edge_distances_drawn(resolved, joint);
            const auto shown =
                model::edge_distances_shown(tests::book_catalogue(), resolved, joint);
            not_shown += drawn == shown ? 0U : 1U;
            for (const auto& line : kind.words) {
                const auto at = line.find(as_drawn);
                if (at == std::string::npos) continue;
                std::istringstream told(line.substr(at + as_drawn.size()));
                for (std::string part; std::getline(told, part, ',');) {
                    const auto begin = part.find_first_not_of(' ');
                    const auto end = std::min(part.find(" outer"), part.find(" inner"));
                    REQUIRE(end != std::string::npos);
                    const auto distance = part.substr(begin, end - begin);
                    ++looked_at;
                    CAPTURE(joint, line, distance);
                    CHECK(std::ranges::count(texts, distance, &tests::TextOnPage::text) > 0);
                }
            }
        }
    }
    CHECK(looked_at > 0);
    CHECK(not_shown > 0);
}

// How fast the window draws and answers, without a display: frames a second while the view is
// turned; the time from an input to the finished picture; into what it goes; and beside it the
// least that it takes to draw the same triangles.
// Usage: bench_window [--software] [--shape cabinets|lattice] [--picture FILE.png] [BARS...]
//        (default: cabinets; 100 500 2000)
// It draws on the first graphics card that EGL finds, else (or with --software) as the program
// draws its pictures; the first line says on what. Figures compare within one run. Medians; what is
// worked out on the window's other thread (how far dimensions may go) is left out. Drawn in
// software, processor time is what other work on the machine disturbs least; on a card it is not
// the card's.
#include "editor/open_project.h"
#include "engine/files/whole_file.h"

#include "tests/bench/bare_draw.h"
#include "tests/bench/bench_projects.h"
#include "tests/bench/graphics_context.h"
#include "tests/bench/must.h"
#include "tests/bench/offscreen_window.h"
#include "tests/bench/window_hands.h"
#include "tests/bench/window_stages.h"

#include <cstdio>
#include <cstdlib>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace {

using tests::Spent;

constexpr engine::Viewport window_size{1600, 1000};
constexpr int samples = 4;  // as the window asks for

struct Options {
    bool in_software = false;
    tests::BenchShape shape = tests::BenchShape::cabinets;
    std::string picture;  // of the last window; empty: none
    std::vector<int> sizes;
};

std::optional<Options> read_options(int count, char** arguments) {
    Options options;
    for (int i = 1; i < count; ++i) {
        const std::string_view word = arguments[i];
        const std::string_view next = i + 1 < count ? arguments[i + 1] : "";
        if (word == "--software") {
            options.in_software = true;
        } else if (word == "--shape" && (next == "cabinets" || next == "lattice")) {
            if (next == "lattice") options.shape = tests::BenchShape::lattice;
            ++i;
        } else if (word == "--picture" && !next.empty()) {
            options.picture = next;
            ++i;
        } else if (const int size = std::atoi(arguments[i]); size > 0) {
            options.sizes.push_back(size);
        } else {
            return std::nullopt;
        }
    }
    if (options.sizes.empty()) options.sizes = {100, 500, 2'000};
    return options;
}

struct Size {
    double bars = 0;
    std::size_t pieces = 0;
    std::size_t holes = 0;
    std::size_t triangles = 0;
    std::size_t lines = 0;
};

Size size_of(editor::Desk& desk) {
    Size size;
    for (const auto& frame : editor::project_of(desk).frames)
        size.bars += static_cast<double>(frame.members.size());
    const auto& resolved = editor::derived(desk).resolved;
    const auto& mesh = editor::scene(desk).solid.mesh;
    size.pieces = resolved.pieces.size();
    size.holes = resolved.holes.size();
    size.triangles = mesh.triangles.size() / 3;
    size.lines = mesh.edges.size() / 2;
    return size;
}

// All that is measured of one window.
struct Measured {
    Size size;
    engine::Viewport view;
    tests::Turned turned;
    Spent pointed;
    tests::SpentInTurn typed;
    tests::WindowStages stages;
};

Measured measured(tests::OffscreenWindow& window) {
    tests::show_all(window);
    window.show();
    Measured m{.size = size_of(window.desk), .view = window.desk.ui.view.viewport};
    const auto& batch = editor::scene(window.desk).solid;
    const auto& camera = window.desk.ui.view.camera;
    tests::BareDraw bare{batch, camera, window_size, samples};
    tests::BareDraw bare_view{batch, camera, m.view, samples};
    m.turned = tests::turn_view(window, bare);
    m.pointed = tests::point_at_bars(window);
    m.typed = tests::type_depth(window, bare);
    m.stages = tests::window_stages(window, bare_view);
    return m;
}

void print_size(const Measured& m) {
    const auto& size = m.size;
    std::printf("\n%.0f bars: %zu pieces, %zu holes, %zu triangles, %zu lines; the view %dx%d\n",
                size.bars, size.pieces, size.holes, size.triangles, size.lines, m.view.width,
                m.view.height);
}

void print_spent(const char* what, const Spent& spent, const Measured& m) {
    std::printf("  %-38s %9.2f ms %9.2f ms %10.2f us\n", what, spent.wall_ms, spent.processor_ms,
                spent.wall_ms * 1e3 / m.size.bars);
}

void print_times(const Measured& m) {
    const auto& stages = m.stages;
    std::printf("  %-38s %12s %12s %13s\n", "medians", "wall", "processor", "wall a bar");
    print_spent("input to picture: the view is turned", m.turned.to_picture.first, m);
    print_spent("input to picture: a bar is pointed at", m.pointed, m);
    print_spent("input to picture: a depth is typed", m.typed.first, m);
    print_spent("  resolve", stages.resolve, m);
    print_spent("  resolve, tables, findings", stages.follows, m);
    print_spent("  scene building", stages.scene, m);
    print_spent("  upload of the scene", stages.upload, m);
    print_spent("  building the panels, each frame", stages.panels, m);
    print_spent("  OpenGL: the scene", stages.scene_drawn.first, m);
    print_spent("  OpenGL: the panels", stages.panels_drawn, m);
    print_spent("bare draw of the window's size", m.turned.to_picture.second, m);
    print_spent("bare draw of the view's size", stages.scene_drawn.second, m);
}

// By the clock on the wall and by processor time.
void print_ratio(const char* what, const tests::SpentInTurn& beside) {
    std::printf("  %-38s %9.2f %12.2f\n", what, beside.first.wall_ms / beside.second.wall_ms,
                beside.first.processor_ms / beside.second.processor_ms);
}

void print_ratios(const Measured& m) {
    std::printf("  %-38s %9s %12s\n", "over the bare draw's time, in turn", "wall", "processor");
    print_ratio("the view is turned, window's size", m.turned.to_picture);
    print_ratio("the same, five in a row", m.turned.five);
    print_ratio("a depth is typed, window's size", m.typed);
    print_ratio("OpenGL: the scene, view's size", m.stages.scene_drawn);
    const double ours = 5'000.0 / m.turned.five.first.wall_ms;
    const double bare = 5'000.0 / m.turned.five.second.wall_ms;
    std::printf("  frames a second, five in a row: turned %.1f, bare draw %.1f, ratio %.2f\n", ours,
                bare, ours / bare);
}

void print_growth(const char* what,
                  double Spent::*kind,
                  const Measured& small,
                  const Measured& large) {
    const auto ratio = [&](const Spent& of_small, const Spent& of_large) {
        return of_large.*kind / large.size.bars / (of_small.*kind / small.size.bars);
    };
    const auto& a = small.turned.to_picture;
    const auto& b = large.turned.to_picture;
    std::printf(
        "%s a bar at %.0f over that at %.0f: turned %.2f, pointed %.2f, typed %.2f, bare draw "
        "%.2f\n",
        what, large.size.bars, small.size.bars, ratio(a.first, b.first),
        ratio(small.pointed, large.pointed), ratio(small.typed.first, large.typed.first),
        ratio(a.second, b.second));
}

void write_picture(const tests::OffscreenWindow& window, const std::string& file) {
    const auto written = engine::write_whole_file(file, engine::png_bytes(window.picture()));
    tests::must(written.has_value(), "the picture is written");
}

Measured measured_and_printed(std::shared_ptr<const model::Catalogue> tables,
                              const Options& options,
                              int bars) {
    tests::OffscreenWindow window{std::move(tables), window_size, samples};
    tests::must(!window.fault(), "the driver takes the program's shaders");
    editor::replace_project(window.desk,
                            tests::with_typed_depth(tests::bench_project(options.shape, bars)), {});
    auto m = measured(window);
    print_size(m);
    print_times(m);
    print_ratios(m);
    std::fflush(stdout);
    window.show();
    if (!options.picture.empty()) write_picture(window, options.picture);
    return m;
}

int refused(const engine::Error& error) {
    std::fprintf(stderr, "%s\n", to_text(error).c_str());
    return 1;
}

int run(const Options& options) {
    auto catalogue = editor::open_catalogue();
    if (!catalogue) return refused(catalogue.error());
    const auto context = tests::GraphicsContext::create(options.in_software);
    if (!context) return refused(context.error());
    std::printf("%s\nwindow %dx%d, %d samples a pixel in the view; %s\n", context->words().c_str(),
                window_size.width, window_size.height, samples,
                std::string(tests::name_of(options.shape)).c_str());
    const auto tables = std::make_shared<const model::Catalogue>(std::move(catalogue).value());
    std::vector<Measured> all;
    for (const int bars : options.sizes) {
        all.push_back(measured_and_printed(tables, options, bars));
    }
    for (std::size_t i = 1; i < all.size(); ++i) {
        print_growth("wall", &Spent::wall_ms, all[i - 1], all[i]);
        print_growth("processor", &Spent::processor_ms, all[i - 1], all[i]);
    }
    return 0;
}

}  // namespace

int main(int count, char** arguments) {
    const auto options = read_options(count, arguments);
    if (!options) {
        std::fprintf(stderr,
                     "usage: bench_window [--software] [--shape cabinets|lattice] "
                     "[--picture FILE.png] [BARS...]\n");
        return 2;
    }
    return run(*options);
}

#include "editor/window.h"

#include "editor/assets_path.h"
#include "editor/desk_files.h"
#include "editor/dropped_files.h"
#include "editor/file_changes.h"
#include "editor/glfw_input.h"
#include "editor/joint_list.h"
#include "editor/journal_keeper.h"
#include "editor/kit/fonts.h"
#include "editor/left_behind.h"
#include "editor/open_project.h"
#include "editor/painter.h"
#include "editor/pixel_size.h"
#include "editor/places/shop_tables.h"
#include "editor/recent_files.h"
#include "editor/report_state.h"
#include "editor/screen.h"
#include "editor/state_folder.h"
#include "editor/window_icon.h"
#include "editor/window_look.h"
#include "engine/files/whole_file.h"

#include <GLFW/glfw3.h>
#include <imgui.h>

#include <algorithm>
#include <atomic>
#include <functional>
#include <memory>
#include <ostream>
#include <utility>

namespace editor {
namespace {

constexpr int frames_to_rest = 6;      // after an event, until a field that asked for focus has it
constexpr double blink_seconds = 0.3;  // of a text cursor
constexpr double long_wait_seconds = 30.0;
constexpr double longest_unflushed_seconds = 2.0;  // while something is worked out all along

// GLFW from its start to its end.
class WindowSystem {
public:
    WindowSystem() : is_there_{glfwInit() == GLFW_TRUE} {}
    ~WindowSystem() {
        if (is_there_) glfwTerminate();
    }
    WindowSystem(const WindowSystem&) = delete;
    WindowSystem& operator=(const WindowSystem&) = delete;

    bool is_there() const { return is_there_; }

private:
    bool is_there_ = false;
};

struct WindowDeleter {
    void operator()(GLFWwindow* window) const { glfwDestroyWindow(window); }
};
using WindowHandle = std::unique_ptr<GLFWwindow, WindowDeleter>;

class ImGuiContextScope {
public:
    explicit ImGuiContextScope(ImFontAtlas& fonts) {
        IMGUI_CHECKVERSION();
        ImGui::CreateContext(&fonts);
        ImGui::GetIO().IniFilename = nullptr;
    }
    ~ImGuiContextScope() { ImGui::DestroyContext(); }
    ImGuiContextScope(const ImGuiContextScope&) = delete;
    ImGuiContextScope& operator=(const ImGuiContextScope&) = delete;
};

WindowHandle open_window(const WindowOptions& options) {
    glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 3);
    glfwWindowHint(GLFW_CONTEXT_VERSION_MINOR, 3);
    glfwWindowHint(GLFW_OPENGL_PROFILE, GLFW_OPENGL_CORE_PROFILE);
    glfwWindowHint(GLFW_OPENGL_FORWARD_COMPAT, GLFW_TRUE);
    glfwWindowHintString(GLFW_X11_CLASS_NAME, "barwright");  // StartupWMClass of the desktop entry
    glfwWindowHintString(GLFW_X11_INSTANCE_NAME, "barwright");
    WindowHandle window(
        glfwCreateWindow(options.size.width, options.size.height, "Barwright", nullptr, nullptr));
    if (window == nullptr) return window;
    glfwSetWindowSizeLimits(window.get(), window_sizes.least_width, window_sizes.least_height,
                            GLFW_DONT_CARE, GLFW_DONT_CARE);
    set_window_icon(window.get());
    glfwMakeContextCurrent(window.get());
    glfwSwapInterval(1);
    return window;
}

// Before there is a window: that of the screen on which it is likely to open.
float likely_scale(const UiState& ui) {
    float x = 1.0F;
    float y = 1.0F;
    GLFWmonitor* monitor = glfwGetPrimaryMonitor();
    if (monitor != nullptr) glfwGetMonitorContentScale(monitor, &x, &y);
    return std::clamp(x, 0.5F, 4.0F) * ui.text_scale;
}

// Sizes in the window's own units: on systems that scale those already, the framebuffer is larger
// than the window and nothing is left to scale here.
float scale_of(GLFWwindow* window, const UiState& ui) {
    float x = 1.0F;
    float y = 1.0F;
    glfwGetWindowContentScale(window, &x, &y);
    int width = 0;
    int framebuffer = 0;
    glfwGetWindowSize(window, &width, nullptr);
    glfwGetFramebufferSize(window, &framebuffer, nullptr);
    const float done =
        width > 0 ? static_cast<float>(framebuffer) / static_cast<float>(width) : 1.0F;
    return std::clamp(x / std::max(done, 1.0F), 0.5F, 4.0F) * ui.text_scale;
}

void show_title(GLFWwindow* window, const Desk& desk, std::string& shown) {
    const std::string title =
        title_of(desk) + (desk.history.is_saved() ? "" : " (not saved)") + " - Barwright";
    if (title == shown) return;
    glfwSetWindowTitle(window, title.c_str());
    shown = title;
}

// Those that lie beside the program's tables.
std::vector<std::filesystem::path> sample_files() {
    std::vector<std::filesystem::path> files;
    const auto assets = assets_path();
    if (!assets) return files;
    std::error_code error;
    const auto folder = assets->parent_path() / "samples";
    for (std::filesystem::directory_iterator at(folder, error), end; !error && at != end;
         at.increment(error)) {
        if (is_project_file(at->path())) files.push_back(at->path());
    }
    std::sort(files.begin(), files.end());
    return files;
}

Selection selection_of_joint_called(const Derived& now, const std::string& name) {
    for (const auto& joint : member_joints(*now.project, now.resolved, now.findings)) {
        if (words_of(joint.name) != name) continue;
        return selection_of_joint(*now.project, now.resolved, joint.name);
    }
    return {};
}

// Says on the terminal when there is no such member or joint to be shown.
bool choose_by_name(Desk& desk, const std::string& name, std::ostream& err) {
    if (name.empty()) return true;
    const Derived& now = derived(desk);
    auto& selection = desk.ui.selection;
    selection = selection_of_member(*now.project, now.resolved, name);
    if (selection.pieces.empty()) selection = selection_of_joint_called(now, name);
    if (!selection.pieces.empty()) return true;
    err << "barwright: --choose " << name << ": no piece of the project is of a member or a joint "
        << "that is called so\n";
    return false;
}

// Set by threads beside the window that have something to show. They hold it too: the last of them
// may end after the window.
using Woken = std::shared_ptr<std::atomic<bool>>;

std::function<void()> waking(const Woken& woken) {
    return [woken] {
        *woken = true;
        glfwPostEmptyEvent();  // ends the waiting only; nothing is called for it
    };
}

// The window's life, one frame after another.
class WindowRun {
public:
    WindowRun(GLFWwindow* window,
              Desk& desk,
              Woken woken,
              const WindowOptions& options,
              float fonts_scale,
              std::ostream& out)
        : window_{window},
          desk_{desk},
          woken_{std::move(woken)},
          out_{out},
          painter_{window, options.samples, fonts_scale} {
        if (!options.screenshot) listen_to(window, events_);  // a picture shows no pointer
        if (options.reports_state) items_.emplace();
    }

    const std::optional<engine::Error>& fault() const { return painter_.fault(); }

    // What is worked out beside the window would take the first picture's processors from it. What
    // is done by hand until then waits, since mends ask for it.
    void run() {
        while (!desk_.ui.wants_to_leave) {
            if (!wait()) continue;
            build_frames();
            painter_.paint(desk_);
            glfwSwapBuffers(window_);
            report();
            if (!desk_.bands) begin_bands();
        }
    }

    void begin_bands() {
        desk_.wake = waking(woken_);
        desk_.bands = std::make_unique<BandWorker>(desk_.wake);
    }

    engine::Image run_to_rest() {
        for (int i = 0; i < 2 * frames_to_rest || desk_.ui.goes_on; ++i) {
            glfwPollEvents();
            build_frames();
            painter_.paint(desk_);
        }
        return painter_.picture();
    }

private:
    // Sleeps until there is something to do; says whether a frame is to be drawn.
    bool wait() {
        keep_journal(!is_busy());
        if (is_busy()) {
            glfwPollEvents();
        } else if (events_.input.is_held()) {
            glfwWaitEventsTimeout(1.0 / 60.0);
        } else {
            const bool blinks = ImGui::GetIO().WantTextInput;
            glfwWaitEventsTimeout(blinks ? blink_seconds : long_wait_seconds);
            if (!events_.has_happened && !*woken_ && !blinks) return false;
        }
        if (woken_->exchange(false) || events_.has_happened) frames_left_ = frames_to_rest;
        if (frames_left_ > 0) --frames_left_;
        events_.has_happened = false;
        take_wishes();
        return true;
    }

    bool is_busy() const {
        return frames_left_ > 0 || events_.input.is_pending() || desk_.ui.goes_on;
    }

    // What was edited is written down before anything is waited for. What it has to say is shown.
    void keep_journal(bool is_at_rest) {
        if (!desk_.journal) return;
        const bool said = desk_.ui.notice.has_value();
        desk_.journal->keep(desk_, is_at_rest);
        const double now = glfwGetTime();
        if (is_at_rest || now - flushed_at_ > longest_unflushed_seconds) {
            desk_.journal->flush();
            flushed_at_ = now;
        }
        if (!said && desk_.ui.notice) frames_left_ = frames_to_rest;
    }

    void take_wishes() {
        if (events_.has_come_back) {
            look_at_file(desk_);
            read_prices_again(desk_);
        }
        events_.has_come_back = false;
        if (events_.wants_to_close) {
            wish(desk_, {Intent::Kind::leave});
        } else {
            take_dropped(desk_, events_.dropped);
        }
        events_.wants_to_close = false;
        events_.dropped.clear();
    }

    // All that is waiting is worked off before anything is painted: building a frame costs little,
    // painting one costs much.
    void build_frames() {
        do {
            painter_.use_look(scale_of(window_, desk_.ui), desk_.ui.theme);
            painter_.begin_frame();
            if (desk_.bands) events_.input.apply(ImGui::GetIO());
            if (items_) items_->begin_frame();
            ImGui::NewFrame();
            draw_screen(desk_);
            ImGui::Render();
            keep_journal(false);
        } while (desk_.bands && events_.input.is_pending() && !desk_.ui.wants_to_leave);
        show_title(window_, desk_, title_);
    }

    void report() {
        if (!items_ || frames_left_ > 0 || desk_.ui.goes_on) return;
        const auto line = state_line(desk_, items_->items(), ImGui::GetIO().WantTextInput);
        if (line == reported_) return;
        reported_ = line;
        out_ << "STATE " << line << std::endl;
    }

    GLFWwindow* window_;
    Desk& desk_;
    Woken woken_;
    std::ostream& out_;
    WindowEvents events_;
    Painter painter_;
    std::optional<ItemLog> items_;
    std::string title_;
    std::string reported_;
    int frames_left_ = frames_to_rest;
    double flushed_at_ = 0.0;
};

// Shows what is worked out beside the window too.
engine::Image picture_at_rest(WindowRun& window_run, Desk& desk) {
    auto picture = window_run.run_to_rest();
    if (!desk.bands) return picture;
    desk.bands->wait();
    nest_now(desk);
    buy_facts_now(desk);
    return window_run.run_to_rest();
}

ExitStatus write_screenshot(WindowRun& window_run,
                            Desk& desk,
                            const WindowOptions& options,
                            std::ostream& err) {
    const auto written = engine::write_whole_file(
        *options.screenshot, engine::png_bytes(picture_at_rest(window_run, desk)));
    if (written) return ExitStatus::fine;
    err << "barwright: " << engine::to_text(written.error()) << '\n';
    return ExitStatus::not_possible;
}

// A project that cannot be read is told in the window, or on the terminal when there is only a
// screenshot to be made.
bool open_first(Desk& desk, const WindowOptions& options, std::ostream& err) {
    if (!options.project || open_file(desk, *options.project)) return true;
    if (!options.screenshot) return true;
    if (const auto* trouble = std::get_if<Trouble>(&desk.ui.dialog)) {
        err << "barwright: " << trouble->text << '\n';
    }
    return false;
}

void use_state(Desk& desk) {
    desk.state_folder = usual_state_folder();
    if (desk.state_folder.empty()) return;
    desk.recent = recent_files(desk.state_folder);
    const auto look = read_window_look(desk.state_folder);
    desk.ui.theme = look.theme;
    desk.ui.text_scale = look.text_scale;
    desk.ui.help.has_dismissed_steps = look.has_dismissed_steps;
    desk.ui.sections.folded = look.folded;
    desk.journal = std::make_shared<JournalKeeper>(journal_folder(desk.state_folder));
}

ExitStatus run_with(GLFWwindow* window,
                    Desk& desk,
                    const WindowOptions& options,
                    FontsAhead& fonts,
                    std::ostream& out,
                    std::ostream& err) {
    const auto loaded = engine::load_gl(glfwGetProcAddress);
    if (!loaded) {
        err << "barwright: " << engine::to_text(loaded.error()) << '\n';
        return ExitStatus::not_possible;
    }
    if (!open_first(desk, options, err)) return ExitStatus::not_possible;
    ask_about_left_behind(desk);
    desk.ui.place = place_named(options.place);
    for (const auto table : shop_tables) {
        if (name_of(table) == options.sheet) desk.ui.make.table = table;
    }
    if (options.is_dark) desk.ui.theme = Theme::dark;
    if (!choose_by_name(desk, options.choose, err)) return ExitStatus::not_possible;
    if (options.screenshot) desk.ui.notice.reset();
    const ImGuiContextScope context(fonts.atlas());
    const auto woken = std::make_shared<std::atomic<bool>>(false);
    WindowRun window_run(window, desk, woken, options, fonts.scale(), out);
    if (window_run.fault()) {
        err << "barwright: " << engine::to_text(*window_run.fault()) << '\n';
        return ExitStatus::not_possible;
    }
    auto status = ExitStatus::fine;
    const auto look_now = [&desk] {
        return WindowLook{desk.ui.theme, desk.ui.text_scale, desk.ui.help.has_dismissed_steps,
                          desk.ui.sections.folded};
    };
    const WindowLook began = look_now();
    if (options.screenshot) {
        window_run.begin_bands();
        status = write_screenshot(window_run, desk, options, err);
    } else {
        window_run.run();
        const WindowLook look = look_now();
        if (look != began) write_window_look(look, desk.state_folder);
    }
    desk.bands.reset();  // its thread wakes the window, which is about to go
    desk.ui.dialog = std::monostate{};
    desk.ui.interrupted.clear();
    desk.nest_run.reset();
    desk.buy_run.reset();
    return status;
}

}  // namespace

ExitStatus run_window(const WindowOptions& options, std::ostream& out, std::ostream& err) {
    auto catalogue = open_catalogue();
    if (!catalogue) {
        err << "barwright: " << engine::to_text(catalogue.error()) << '\n';
        return ExitStatus::not_possible;
    }
    Desk desk(std::make_shared<const model::Catalogue>(std::move(catalogue).value()));
    desk.samples = sample_files();
    if (!options.screenshot) use_state(desk);  // a picture is of the project alone
    const WindowSystem system;
    FontsAhead fonts(likely_scale(desk.ui));
    const WindowHandle window = system.is_there() ? open_window(options) : nullptr;
    if (window == nullptr) {
        err << "barwright: no window can be opened here: it needs a display with OpenGL 3.3; "
               "`barwright picture` draws without one\n";
        return ExitStatus::not_possible;
    }
    return run_with(window.get(), desk, options, fonts, out, err);
}

}  // namespace editor

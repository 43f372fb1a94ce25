#include "model/project/journal.h"

#include "engine/files/json_text.h"
#include "model/project/project_json.h"

#include <nlohmann/json.hpp>

#include <utility>
#include <vector>

namespace model {
namespace {

using nlohmann::json;

constexpr int journal_format = 1;
constexpr auto format_key = "barwright_journal";

// Bytes that are not UTF-8 become U+FFFD.
std::string text_of(const json& tree) {
    return tree.dump(-1, ' ', false, json::error_handler_t::replace);
}

engine::Error not_a_journal(std::string message) {
    return {engine::ErrorCode::bad_file, "record 1", std::move(message)};
}

struct Start {
    std::string file;
    json project;
};

engine::Result<Start> start_in(std::span<const std::string> records) {
    if (records.empty()) return not_a_journal("this journal holds nothing");
    auto tree = engine::read_json(records.front());
    if (!tree) return tree.error();
    const json& first = *tree;
    const auto format = first.is_object() ? first.find(format_key) : first.end();
    if (format == first.end() || !format->is_number_integer())
        return not_a_journal("this is no journal of a project");
    if (*format > journal_format) {
        return engine::Error{engine::ErrorCode::newer_version, "record 1",
                             "it was written by a later version of the program"};
    }
    const auto file = first.find("file");
    const auto project = first.find("project");
    if (file == first.end() || !file->is_string() || project == first.end())
        return not_a_journal("the project that it begins with is missing");
    return Start{file->get<std::string>(), *project};
}

// Whether the place that the operation puts something into is a list or an object: the library
// takes that for granted.
bool has_parent(const json& project, const json& operation) {
    const auto path = json::json_pointer(operation.at("path").get<std::string>());
    if (path.empty()) return true;
    const auto parent = path.parent_pointer();
    return project.contains(parent) && project.at(parent).is_structured();
}

// What a record does to a project; where it cannot be, the project may be half changed.
bool takes_step(json& project, const json& record) {
    const auto label = record.find("label");
    if (label == record.end() || !label->is_string()) return false;
    const auto whole = record.find("project");
    if (whole != record.end()) {
        project = *whole;
        return true;
    }
    const auto patch = record.find("patch");
    if (patch == record.end()) return false;
    try {
        for (const auto& operation : *patch) {
            if (!has_parent(project, operation)) return false;
            project.patch_inplace(json::array({operation}));
        }
        return patch->is_array();
    } catch (const json::exception&) {  // the library's way to say that it does not fit
        return false;
    }
}

// The steps up to the first that cannot be read.
std::vector<json> steps_in(std::span<const std::string> records) {
    std::vector<json> steps;
    for (const auto& record : records) {
        auto tree = engine::read_json(record);
        if (!tree || !tree->is_object()) break;
        steps.push_back(std::move(tree).value());
    }
    return steps;
}

// The project after all the steps; none where one cannot be taken or what comes of them is none.
std::optional<Project> after_steps(json project, std::span<const json> steps) {
    for (const auto& step : steps) {
        if (!takes_step(project, step)) return std::nullopt;
    }
    auto read = read_project_json(project.dump());
    return read ? std::optional(std::move(read).value()) : std::nullopt;
}

// How many steps from the first can be taken one by one, each to a project.
std::size_t sound_steps(json project, std::span<const json> steps) {
    for (std::size_t i = 0; i < steps.size(); ++i) {
        if (!takes_step(project, steps[i]) || !read_project_json(project.dump())) return i;
    }
    return steps.size();
}

}  // namespace

JournalWriter::JournalWriter(const Project& saved, std::string file)
    : last_{std::make_unique<json>(json::parse(to_json_text(saved)))},
      first_{
          text_of({{format_key, journal_format}, {"file", std::move(file)}, {"project", *last_}})} {
}

JournalWriter::~JournalWriter() = default;
JournalWriter::JournalWriter(JournalWriter&&) noexcept = default;
JournalWriter& JournalWriter::operator=(JournalWriter&&) noexcept = default;

std::optional<std::string> JournalWriter::next_record(const Project& next,
                                                      const std::string& label) {
    const auto whole = to_json_text(next);
    auto tree = json::parse(whole);
    auto patch = json::diff(*last_, tree);
    if (patch.empty()) return std::nullopt;
    *last_ = std::move(tree);
    auto record = text_of({{"label", label}, {"patch", std::move(patch)}});
    if (record.size() <= whole.size()) return record;
    return text_of({{"label", label}, {"project", *last_}});
}

engine::Result<ReplayedJournal> replayed(std::span<const std::string> records) {
    const auto start = start_in(records);
    if (!start) return start.error();
    auto saved = read_project_json(start->project.dump());
    if (!saved) return saved.error();
    auto steps = steps_in(records.subspan(1));
    auto now = after_steps(start->project, steps);
    if (!now) {
        steps.resize(sound_steps(start->project, steps));
        now = after_steps(start->project, steps);
    }
    ReplayedJournal journal{.file = start->file, .saved = std::move(saved).value()};
    journal.now = now ? *std::move(now) : journal.saved;
    journal.steps = steps.size();
    journal.left_out = records.size() - 1 - steps.size();
    if (!steps.empty()) journal.last_label = steps.back().at("label").get<std::string>();
    return journal;
}

}  // namespace model

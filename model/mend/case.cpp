#include "engine/measure/formula.h"
#include "model/mend/ways.h"

#include <algorithm>

namespace model {
namespace {

bool is_bar_of(const Frame& frame, const std::string& name) {
    return named(frame.members, name) != nullptr || named(frame.diagonals, name) != nullptr ||
           named(frame.leaning, name) != nullptr;
}

// Names may hold the sign that stands between them.
std::optional<std::array<std::string, 2>> parted(const Frame& frame, const std::string& name) {
    constexpr std::string_view sign = " + ";
    for (auto at = name.find(sign); at != std::string::npos; at = name.find(sign, at + 1)) {
        std::array<std::string, 2> members{name.substr(0, at), name.substr(at + sign.size())};
        if (is_bar_of(frame, members[0]) && is_bar_of(frame, members[1])) return members;
    }
    const bool is_stated = std::ranges::any_of(frame.joints, [&](const JointOverride& joint) {
        return joint.members[0] + std::string(sign) + joint.members[1] == name;
    });
    if (!is_stated) return std::nullopt;
    const auto at = std::ranges::find_if(frame.joints, [&](const JointOverride& joint) {
        return joint.members[0] + std::string(sign) + joint.members[1] == name;
    });
    return at->members;
}

bool is_about(const JointOverride& joint, const std::array<std::string, 2>& members) {
    return joint.members == members ||
           (joint.members[0] == members[1] && joint.members[1] == members[0]);
}

}  // namespace

const Frame* frame_named(const Case& of, const std::string& name) {
    return named(of.project().frames, name);
}

std::optional<Index> index_of_frame(const Case& of, const std::string& name) {
    const auto& frames = of.project().frames;
    const auto at = std::ranges::find(frames, name, &Frame::name);
    if (at == frames.end()) return std::nullopt;
    return static_cast<Index>(at - frames.begin());
}

std::vector<FrameJoint> joints_of(const Case& of) {
    std::vector<FrameJoint> joints;
    for (const auto& subject : of.finding.concerns) {
        const auto* frame = frame_named(of, subject.frame);
        if (subject.kind != SubjectKind::joint || frame == nullptr) continue;
        const auto members = parted(*frame, subject.name);
        if (!members) continue;
        const FrameJoint joint{subject.frame, *members};
        if (std::ranges::find(joints, joint) == joints.end()) joints.push_back(joint);
    }
    return joints;
}

JointOverride stated_joint(const Case& of, const FrameJoint& joint) {
    const auto* frame = frame_named(of, joint.frame);
    if (frame != nullptr) {
        for (const auto& stated : frame->joints) {
            if (is_about(stated, joint.members)) return stated;
        }
    }
    return {.members = joint.members};
}

std::optional<engine::Length> length_of(const Finding& finding, const std::string& name) {
    for (const auto& number : finding.numbers) {
        const auto* length = std::get_if<engine::Length>(&number.value);
        if (number.name == name && length != nullptr) return *length;
    }
    return std::nullopt;
}

std::optional<double> number_of(const Finding& finding, const std::string& name) {
    for (const auto& number : finding.numbers) {
        const auto* value = std::get_if<double>(&number.value);
        if (number.name == name && value != nullptr) return *value;
    }
    return std::nullopt;
}

std::string words_of(const Case& of, engine::Length length) {
    return length_in_words(length, of.project().shown);
}

Formula formula_plus(const Case& of, const Formula& formula, Nm value, Nm more) {
    if (engine::names_in(formula).empty()) {
        return words_of(of, engine::Length::from_nm(value + more));
    }
    const auto size = words_of(of, engine::Length::from_nm(more < 0 ? -more : more));
    return "(" + formula + ") " + (more < 0 ? "- " : "+ ") + size;
}

Nm up_to_mark(const Case& of, Nm length) {
    const Nm step = engine::tape_step(of.project().shown).nm();
    return (length + step - 1) / step * step;
}

void change_joints(const Case& of,
                   Ways& ways,
                   const std::string& name,
                   const std::string& words,
                   const std::function<void(JointOverride&)>& change) {
    Mend mend{name, words, {}};
    for (const auto& joint : joints_of(of)) {
        const auto before = stated_joint(of, joint);
        auto after = before;
        change(after);
        if (!(after == before)) mend.edits.emplace_back(PutJoint{joint.frame, std::move(after)});
    }
    if (!mend.edits.empty()) ways.push_back(std::move(mend));
}

}  // namespace model

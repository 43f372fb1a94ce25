// The one dialog that may be open, as a value.
#pragma once

#include "editor/dialogs/bay_form.h"
#include "editor/dialogs/changed_question.h"
#include "editor/dialogs/command_finder_state.h"
#include "editor/dialogs/copy_form.h"
#include "editor/dialogs/dimension_form.h"
#include "editor/dialogs/export_question.h"
#include "editor/dialogs/file_browser.h"
#include "editor/dialogs/lean_form.h"
#include "editor/dialogs/member_form.h"
#include "editor/dialogs/mirror_form.h"
#include "editor/dialogs/node_bar_form.h"
#include "editor/dialogs/obstacle_form.h"
#include "editor/dialogs/opening_form.h"
#include "editor/dialogs/panel_form.h"
#include "editor/dialogs/place_form.h"
#include "editor/dialogs/plane_form.h"
#include "editor/dialogs/recovery_question.h"
#include "editor/dialogs/repeat_form.h"
#include "editor/dialogs/scan_form.h"
#include "editor/dialogs/split_form.h"
#include "editor/dialogs/starter_form.h"
#include "editor/dialogs/step_form.h"
#include "editor/dialogs/supplier_form.h"
#include "editor/dialogs/take_out_form.h"
#include "editor/dialogs/title_form.h"
#include "editor/dialogs/trade_words_state.h"
#include "editor/dialogs/unsaved_question.h"
#include "editor/dialogs/vent_form.h"
#include "editor/dialogs/wall_survey.h"
#include "editor/dialogs/well_survey.h"

#include <memory>
#include <string>
#include <variant>

namespace editor {

// Something went wrong that the user must know before going on.
struct Trouble {
    std::string title;
    std::string text;
};

struct WriteRun;  // editor/write_run.h

// Files are worked out that are to be written.
struct Writing {
    std::shared_ptr<WriteRun> run;
};

using Dialog = std::variant<std::monostate,
                            FileBrowser,
                            StarterForm,
                            DimensionForm,
                            TitleForm,
                            UnsavedQuestion,
                            Trouble,
                            ExportQuestion,
                            PanelForm,
                            VentForm,
                            BraceForm,
                            LeaningForm,
                            ObstacleForm,
                            WellSurvey,
                            WallSurvey,
                            OpeningForm,
                            ScanForm,
                            StepForm,
                            PlaceForm,
                            LeanForm,
                            SplitForm,
                            MirrorForm,
                            RepeatForm,
                            CopyForm,
                            TakeOutForm,
                            RecoveryQuestion,
                            ChangedQuestion,
                            CommandFinder,
                            MemberForm,
                            PlaneForm,
                            BayForm,
                            SupplierForm,
                            TradeWords,
                            Writing>;

inline bool is_open(const Dialog& dialog) {
    return !std::holds_alternative<std::monostate>(dialog);
}

// Whether it holds something that the user has filled in.
inline bool is_form(const Dialog& dialog) {
    return std::holds_alternative<StarterForm>(dialog) ||
           std::holds_alternative<DimensionForm>(dialog) ||
           std::holds_alternative<TitleForm>(dialog) || std::holds_alternative<PanelForm>(dialog) ||
           std::holds_alternative<VentForm>(dialog) || std::holds_alternative<BraceForm>(dialog) ||
           std::holds_alternative<LeaningForm>(dialog) ||
           std::holds_alternative<ObstacleForm>(dialog) ||
           std::holds_alternative<WellSurvey>(dialog) ||
           std::holds_alternative<WallSurvey>(dialog) ||
           std::holds_alternative<OpeningForm>(dialog) ||
           std::holds_alternative<ScanForm>(dialog) || std::holds_alternative<StepForm>(dialog) ||
           std::holds_alternative<PlaceForm>(dialog) || std::holds_alternative<LeanForm>(dialog) ||
           std::holds_alternative<SplitForm>(dialog) ||
           std::holds_alternative<MirrorForm>(dialog) ||
           std::holds_alternative<RepeatForm>(dialog) || std::holds_alternative<CopyForm>(dialog) ||
           std::holds_alternative<TakeOutForm>(dialog) ||
           std::holds_alternative<MemberForm>(dialog) ||
           std::holds_alternative<PlaneForm>(dialog) || std::holds_alternative<BayForm>(dialog) ||
           std::holds_alternative<SupplierForm>(dialog);
}

}  // namespace editor

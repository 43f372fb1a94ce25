// Works out beside the window how far dimensions may go.
#pragma once

#include "editor/history.h"
#include "model/catalogue/catalogue.h"
#include "model/room/band.h"
#include "model/room/scans.h"

#include <condition_variable>
#include <functional>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <thread>
#include <vector>

namespace editor {

// Bands of one project state.
struct BandsWanted {
    Snapshot project;
    std::shared_ptr<const model::Catalogue> catalogue;
    std::shared_ptr<const model::ScanLibrary> scans;
    std::vector<std::string> dimensions;  // the most wanted first
};

// What is known of how far a dimension may go.
struct BandState {
    bool is_settled = false;  // worked out for the project that was wanted last
    // While it is not settled, that of a state before. None: there is none, or none yet.
    std::optional<model::Band> band;
    std::string trouble;  // why it cannot be worked out; empty: it can
};

// One thread, asked and answered by the window's. A band does not depend on its dimension's own
// formula, so that it stays true while that is dragged.
class BandWorker {
public:
    using Work = std::function<std::optional<model::Band>(const model::Project&,
                                                          const model::Catalogue&,
                                                          const model::ScanLibrary&,
                                                          const std::string& dimension,
                                                          const std::function<bool()>& go_on)>;

    // `wake` is called from the thread when a band is there; may be empty. What the work throws
    // becomes the band's trouble.
    explicit BandWorker(std::function<void()> wake = {}, Work work = model::band_of);
    ~BandWorker();
    BandWorker(const BandWorker&) = delete;
    BandWorker& operator=(const BandWorker&) = delete;

    // Replaces what was wanted before. What is being worked out goes on if it is still true.
    void want(BandsWanted wanted);

    // That of the project wanted last; none until it is worked out, and where there is none.
    std::optional<model::Band> band(const std::string& dimension) const;

    // The same with that of a state before until then.
    BandState state(const std::string& dimension) const;

    // Another project is to come: nothing is known of it.
    void forget();

    // Until all that is wanted is there.
    void wait();

    bool is_busy() const;

private:
    struct Known {
        BandState state;
        Snapshot of;
        std::shared_ptr<const model::ScanLibrary> scans;
    };

    void run();
    Known worked_out(const BandsWanted& job, const std::string& dimension) const;
    // Whether what was worked out of that is true of what is wanted.
    bool holds(const Snapshot& of,
               const std::shared_ptr<const model::ScanLibrary>& scans,
               const std::string& dimension) const;
    // The first that is wanted and not settled; empty: none.
    std::string next_wanted() const;
    static bool is_same_but_for(const model::Project& a,
                                const model::Project& b,
                                const std::string& dimension);

    std::function<void()> wake_;
    Work work_;
    mutable std::mutex mutex_;
    std::condition_variable changed_;
    BandsWanted wanted_;
    std::map<std::string, Known> known_;
    std::string working_on_;  // empty: on nothing
    BandsWanted working_of_;
    bool is_stale_ = false;  // what is being worked out is true no more
    bool ends_ = false;
    std::thread thread_;  // last: it uses the others
};

}  // namespace editor

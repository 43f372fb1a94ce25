#include "engine/drawing/pdf_date.h"

#include <array>
#include <charconv>
#include <chrono>
#include <cstdint>
#include <cstdio>
#include <cstdlib>

namespace engine {

std::optional<std::string> date_of_epoch(std::string_view seconds) {
    constexpr std::int64_t last = 253'402'300'799;  // the end of the year 9999
    std::int64_t count = 0;
    const char* end = seconds.data() + seconds.size();
    const auto read = std::from_chars(seconds.data(), end, count);
    if (read.ec != std::errc{} || read.ptr != end || count < 0 || count > last) return std::nullopt;
    const std::chrono::sys_seconds moment{std::chrono::seconds{count}};
    const auto midnight = std::chrono::floor<std::chrono::days>(moment);
    const std::chrono::year_month_day day{midnight};
    const std::chrono::hh_mm_ss time{moment - midnight};
    std::array<char, 40> text{};
    const int length = std::snprintf(
        text.data(), text.size(), "%04d-%02u-%02uT%02d:%02d:%02dZ", static_cast<int>(day.year()),
        static_cast<unsigned>(day.month()), static_cast<unsigned>(day.day()),
        static_cast<int>(time.hours().count()), static_cast<int>(time.minutes().count()),
        static_cast<int>(time.seconds().count()));
    return std::string(text.data(), static_cast<std::size_t>(length));
}

std::string date_of_file() {
    const char* seconds = std::getenv("SOURCE_DATE_EPOCH");
    if (seconds != nullptr) {
        if (const auto date = date_of_epoch(seconds)) return *date;
    }
    return "2000-01-01T00:00:00Z";
}

}  // namespace engine

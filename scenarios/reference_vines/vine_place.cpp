#include "scenarios/reference_vines/vine_place.h"

#include <algorithm>
#include <cmath>

#include "scenarios/io/json.h"
#include "scenarios/records/act.h"
#include "scenarios/records/table_import.h"

namespace spurwright::reference_vines {
namespace {

constexpr double metres_a_degree = 111'320; // of latitude, to 0.7 % from the equator to a pole; our choice
constexpr double rad = 3.14159265358979323846 / 180;

enum StandColumn : std::size_t { stand_row, stand_place, stand_latitude, stand_longitude };

std::string quoted_cell(const std::string& typed) {
    std::string cell = "\"";
    for (const char c : typed) cell += c == '"' ? std::string("\"\"") : std::string(1, c);
    return cell + "\"";
}

Error place_refusal(const records::RefusedRow& row) {
    Arguments arguments = row.arguments;
    arguments.push_back({"reason", row.reason});
    arguments.push_back({"column", row.column});
    return {Fault::bad_text, TextKey{row.column.empty() ? "screen.book.refused-row" : "screen.book.refused"}, std::move(arguments), {}};
}

double cos_of_latitude(const MapPoint& point) { return std::cos(static_cast<double>(point.latitude_e7) / 1e7 * rad); }

std::string degrees_typed(const std::optional<std::int64_t>& e7) { return e7 ? io::Json::decimal(*e7, 7).text : std::string(); }

} // namespace

TypedPlace typed_place(const ReferenceVine& vine) {
    return {vine.row, vine.place ? std::to_string(*vine.place) : std::string(), degrees_typed(vine.latitude_e7), degrees_typed(vine.longitude_e7)};
}

Result<ReferenceVine> stand_at(ReferenceVine vine, const TypedPlace& typed) {
    static const std::vector<records::ColumnName> known{{"row", {}, false}, {"place", {}, false}, {"latitude", {}, false}, {"longitude", {}, false}};
    const std::string table = "row,place,latitude,longitude\n" + quoted_cell(typed.row) + "," + quoted_cell(typed.place) + "," + quoted_cell(typed.latitude) + "," + quoted_cell(typed.longitude) + "\n";
    auto reader = io::CsvReader::of(table, "book");
    if (!reader) return failure(reader.error());
    const auto columns = records::Columns::of(reader->headings(), known, "book");
    if (!columns) return failure(columns.error());
    io::CsvRow row;
    const auto there = reader->next(row);
    if (!there) return failure(there.error());
    vine.row.clear();
    vine.place = vine.latitude_e7 = vine.longitude_e7 = std::nullopt;
    if (!*there) return vine; // nothing typed at all
    records::RowReader cells(row, *columns);
    if (cells.given(stand_row)) vine.row = cells.text(stand_row);
    vine.place = cells.whole(stand_place, 1, 100'000);
    const auto latitude = cells.number(stand_latitude, -90, 90), longitude = cells.number(stand_longitude, -180, 180);
    if (!cells.refused() && latitude.has_value() != longitude.has_value()) cells.refuse(latitude ? stand_longitude : stand_latitude, "error.import.missing");
    if (cells.refused()) return failure(place_refusal(cells.refusal()));
    if (latitude && longitude) {
        vine.latitude_e7 = std::llround(*latitude * 1e7);
        vine.longitude_e7 = std::llround(*longitude * 1e7);
    }
    return vine;
}

bool stand_alike(const ReferenceVine& a, const ReferenceVine& b) { return a.row == b.row && a.place == b.place && a.latitude_e7 == b.latitude_e7 && a.longitude_e7 == b.longitude_e7; }

Apart apart(const MapPoint& from, const MapPoint& to) {
    const double east = metres_a_degree * cos_of_latitude(from);
    return {static_cast<double>(to.latitude_e7 - from.latitude_e7) / 1e7 * metres_a_degree, static_cast<double>(to.longitude_e7 - from.longitude_e7) / 1e7 * east};
}

MapPoint moved(const MapPoint& from, const Apart& by) {
    const double east = std::max(1.0, metres_a_degree * cos_of_latitude(from)); // at the very poles any east is as good
    const auto within = [](double e7, std::int64_t most) { return std::clamp<std::int64_t>(std::llround(e7), -most, most); };
    return {within(static_cast<double>(from.latitude_e7) + by.north_m / metres_a_degree * 1e7, 900'000'000), within(static_cast<double>(from.longitude_e7) + by.east_m / east * 1e7, 1'800'000'000)};
}

std::optional<MapPoint> middle_point(const std::vector<ReferenceVine>& vines) {
    double latitude = 0, longitude = 0;
    int n = 0;
    for (const ReferenceVine& vine : vines) {
        if (!vine.latitude_e7 || !vine.longitude_e7) continue;
        latitude += static_cast<double>(*vine.latitude_e7);
        longitude += static_cast<double>(*vine.longitude_e7);
        ++n;
    }
    if (n == 0) return std::nullopt;
    return MapPoint{std::llround(latitude / n), std::llround(longitude / n)};
}

Result<void> keep_place(records::Store& store, std::int64_t block, ReferenceVine vine, const std::string& when_utc) {
    const auto act = records::Act::begin(store, "book-vine", when_utc);
    if (!act) return failure(act.error());
    if (auto done = put_vine(store, block, vine); !done) return done;
    return (*act)->commit();
}

} // namespace spurwright::reference_vines

#include "scenarios/reference_vines/book_export.h"

#include "scenarios/io/csv.h"
#include "sim/balance/vine_size.h"

namespace spurwright::reference_vines {
namespace {

std::string whole_text(const std::optional<std::int64_t>& value) { return value ? std::to_string(*value) : std::string(); }

std::string degrees_text(const std::optional<std::int64_t>& e7) { return e7 ? io::Json::decimal(*e7, 7).text : std::string(); }

} // namespace

std::string kg_text(Mass mass) { return io::Json::decimal(mass.count, 6).text; }

Exported book_csv(const Book& book) {
    Exported out;
    const std::string end(io::csv_line_end);
    out.text = "block,row,tag,place,winter,date,weight_kg,canes,buds,crop_kg,latitude,longitude,note" + end;
    for (const BlockBook& one : book)
        for (const ReferenceVine& vine : one.vines)
            for (const Weighing& w : vine.winters) {
                out.text += io::csv_text(one.block.name) + ',' + io::csv_text(vine.row) + ',' + io::csv_text(vine.tag) + ',' + whole_text(vine.place) + ',' +
                            std::to_string(w.winter) + ',' + w.day + ',' + kg_text(w.prunings) + ',' + whole_text(w.canes) + ',' + whole_text(w.buds) + ',' +
                            (w.crop ? kg_text(*w.crop) : std::string()) + ',' + degrees_text(vine.latitude_e7) + ',' + degrees_text(vine.longitude_e7) + ',' +
                            io::csv_text(w.note) + end;
                ++out.written;
            }
    return out;
}

Exported book_geojson(const Book& book) {
    Exported out;
    io::Json features = io::Json::list();
    for (const BlockBook& one : book)
        for (const ReferenceVine& vine : one.vines) {
            if (!vine.latitude_e7 || !vine.longitude_e7) {
                ++out.left_out;
                continue;
            }
            io::Json point = io::Json::list();
            point.push(io::Json::decimal(*vine.longitude_e7, 7));
            point.push(io::Json::decimal(*vine.latitude_e7, 7));
            io::Json geometry = io::Json::object();
            geometry.set("type", "Point");
            geometry.set("coordinates", std::move(point));
            io::Json properties = io::Json::object();
            properties.set("block", one.block.name);
            properties.set("invented", one.block.invented);
            properties.set("row", vine.row);
            properties.set("tag", vine.tag);
            properties.set("place", vine.place ? io::Json(*vine.place) : io::Json());
            if (!vine.winters.empty()) {
                const Weighing& w = vine.winters.back();
                properties.set("winter", w.winter);
                properties.set("weight_kg", io::Json::decimal(w.prunings.count, 6));
                properties.set("kg_per_m", io::Json::number(balance::size_of(w.prunings.count / 1e6, in_m(one.block.spacing)), 3));
            }
            io::Json feature = io::Json::object();
            feature.set("type", "Feature");
            feature.set("geometry", std::move(geometry));
            feature.set("properties", std::move(properties));
            features.push(std::move(feature));
            ++out.written;
        }
    io::Json all = io::Json::object();
    all.set("type", "FeatureCollection");
    all.set("features", std::move(features));
    out.text = io::print_json(all);
    return out;
}

} // namespace spurwright::reference_vines

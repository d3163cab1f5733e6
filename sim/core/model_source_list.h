// The works the growth model, its checks and the calculators lean on besides those of the rules (source_list.h), key as everywhere. How
// each was read stands in its cite where it was less than the whole work. Addresses as recorded; "-": none.
#pragma once

#include <array>
#include <string_view>

#include "sim/core/source_list.h"

namespace spurwright::sources {

inline constexpr auto model_sources = std::to_array<Source>({
    {"ajev-6034",
     "\"Influence of trellis system on the amount of shoot and leaf growth and crop yield of Cabernet Sauvignon\", "
     "Table "
     "3, Am. J. Enol. Vitic. (the table)",
     "https://www.ajevonline.org/highwire/markup/6034/expansion", 'A'},
    {"ajev-6021", "the same paper, Table 4, single cordon, 1992 (the table)",
     "https://www.ajevonline.org/highwire/markup/6021/expansion", 'A'},
    {"ajev-6006", "the same paper, Table 5, quadrilateral cordon, 1992 (the table)",
     "https://www.ajevonline.org/highwire/markup/6006/expansion", 'A'},
    {"antcliff-1955", "Antcliff, Webster, May, Austral. J. Agric. Res. 6:823-832, 1955 (abstract)", "-", 'A'},
    {"antcliff-1965", "Antcliff, Vitis 5:1-9, 1965, Sultana cane number (abstract)", "-", 'A'},
    {"bates-2021", "T. Bates, Concord crop load, Am. J. Enol. Vitic. 72:1, 2021 (abstract)", "-", 'A'},
    {"birnbaum-1968", "A. Birnbaum, in Lord, Novick, Statistical Theories of Mental Test Scores, 1968 (from memory; computed here)", "-", 'B'},
    {"bisshopp-drucker",
     "Bisshopp, Drucker, large deflection of cantilever beams, 1945 (the problem; its values computed here)", "-", 'A'},
    {"brier-1950", "G. Brier, Monthly Weather Review 78:1-3, 1950 (from memory; computed here)", "-", 'B'},
    {"coombe-2019",
     "Biometry Hub, University of Adelaide, Shiraz rootstock trial, 352 single vines weighed and counted in 2019 (open "
     "data, MIT licence; its figures computed here)",
     "https://github.com/AAGI-AUS/InPlotSampling", 'A'},
    {"cooksplace-2013", "a grower's page, 2013", "-", 'C'},
    {"cornell-severity",
     "Cornell Lake Erie programme (T. Bates), \"Vine Size, Pruning Severity, and Vine Balance\"",
     "https://efficientvineyard.com/blog/vine-size-pruning-severity-and-vine-balance", 'A'},
    {"cortell-2012", "J. Cortell, Oregon Wine Press, 2012",
     "https://www.oregonwinepress.com/article?articleId=1089", 'B'},
    {"epee-2024", "P. Epee et al., OENO One 58(3) 7930, 2024 (abstract)",
     "https://doi.org/10.20870/oeno-one.2024.58.3.7930", 'A'},
    {"fao-frost", "FAO, frost protection, Table 4.8 (as quoted by a grower's page)",
     "https://millsvineyard.blogspot.com/2014/01/published-data-on-critical-temperatures.html", 'A'},
    {"ferguson-2014",
     "Ferguson, Moyer, Mills, Hoogenboom, Keller, \"Modeling dormant bud cold hardiness and budbreak\", Am. J. Enol. "
     "Vitic. 65:59-71, 2014",
     "https://doi.org/10.5344/ajev.2013.13098", 'A'},
    {"finigan", "a grower's blog, whose misreading of a formula a test guards against", "-", 'C'},
    {"gardea-1987", "Gardea, 1987, Pinot noir critical temperatures (through ferguson-2014, Table 2)", "-", 'A'},
    {"gatti-2016", "Gatti et al., delayed pruning of Sangiovese, Front. Plant Sci. 7:659, 2016 (abstract)", "-", 'A'},
    {"glickman-2022", "M. Glickman, \"Example of the Glicko-2 system\", 2022 (its algorithm and worked example, in copies of the note)", "-", 'A'},
    {"growingproduce-buds",
     "\"Evaluating Grapevine Buds For Winter Injury\", Growing Produce (a Cornell Finger Lakes method)",
     "https://www.growingproduce.com/fruits/evaluating-grapevine-buds-for-winter-injury/", 'B'},
    {"keller-2015", "Keller et al., Merlot shoot number, Funct. Plant Biol. 42:366, 2015 (abstract)", "-", 'A'},
    {"kliewer-2005",
     "M. Kliewer, N. Dokoozlian, leaf area / crop weight ratios, Am. J. Enol. Vitic. 56:170-181, 2005 (abstract; volume "
     "and pages from memory)",
     "https://scribd.com/document/712045497", 'A'},
    {"migicovsky-2022",
     "Migicovsky et al., trunk rings of 103 vines, Horticulture Research uhac226, 2022 (the form of its "
     "model)",
     "-", 'A'},
    {"odneal-2012",
     "M. Odneal, Missouri State Fruit Experiment Station, \"Grape pruning begins\", 8 Nov 2012",
     "https://blogs.missouristate.edu/fruitexperimentstation/2012/11/08/grape-pruning-begins/", 'A'},
    {"ozdemir-cutting",
     "Ozdemir, Sessiz, Esgici, Elicin, cutting properties of dormant canes, Scientific Papers Ser. B "
     "Horticulture LIX (abstract)",
     "https://horticulturejournal.usamv.ro/index.php/scientific-papers/9-articles", 'A'},
    {"pinot-fruitfulness-2013", "Pinot noir fruitfulness model, Am. J. Enol. Vitic. 64:274, 2013 (abstract)",
     "https://www.ajevonline.org/content/64/2/274", 'A'},
    {"pratt-coombe", "C. Pratt, B. Coombe, shoot growth and anthesis in Vitis (summary)",
     "http://www.andaman-ag.com/shoot-growth-and-anthesis-in-vitis/", 'A'},
    {"proebsting-1978", "Proebsting et al., 1978, Concord critical temperatures (through ferguson-2014, Table 2)", "-",
     'A'},
    {"remich-series",
     "budbreak of seven cultivars with daily temperatures, Moselle valley, 1970-2019 (sums computed by "
     "us)",
     "-", 'A'},
    {"rosner-1983", "Rosner, Cook, Am. J. Enol. Vitic. 34:243-248, 1983 (abstract)", "-", 'A'},
    {"spinelli-2012", "Spinelli et al., vineyard prunings, Applied Energy 89:374-379, 2012 (abstract)", "-", 'A'},
    {"sunmuscat-2023", "Sunmuscat, 6 to 15 canes, Aust. J. Grape Wine Res. 2023:7786501 (Tables 1 and 2)", "-", 'A'},
    {"wang-2008",
     "Wang, Juettler, Zheng, Liu, rotation minimizing frames by double reflection, ACM TOG 27(1):2, 2008 "
     "(abstract)",
     "-", 'A'},
    {"weinplus-tendrils", "lexicon of wine, \"Tendrils\"", "https://glossary.wein.plus/tendrils", 'B'},
    {"wilson-1927", "E. Wilson, J. Am. Stat. Assoc. 22:209-212, 1927 (from memory; computed here)", "-", 'B'},
    {"winkler-agroclim", "an R package of agroclimatic indices, reference page of its growing degree days", "-", 'A'},
});

// The work of a key, of the rules' list or the model's; null where neither has it.
constexpr const Source* find_source(std::string_view key) {
    for (const Source* source : all)
        if (source->key == key) return source;
    for (const Source& source : model_sources)
        if (source.key == key) return &source;
    return nullptr;
}

} // namespace spurwright::sources

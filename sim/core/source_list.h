// The works the rules lean on, one record a work, key as everywhere. Only works that a rule's claims name stand here.
// Addresses as recorded; "-": none.
#pragma once

#include <array>

#include "sim/core/source.h"

namespace spurwright::sources {

inline constexpr Source hellman_2019{"hellman-2019",
                                     "E. Hellman (Texas AgriLife Extension), \"Cane Pruning\", eXtension Grapes, 2019",
                                     "https://grapes.extension.org/2019/06/cane-pruning/", 'A'};
inline constexpr Source hellman_tamu{"hellman-tamu", "E. Hellman, pruning page, Texas A&M winegrapes",
                                     "https://winegrapes.tamu.edu/grow/pruning.html", 'A'};
inline constexpr Source extension_bull_canes{
    "extension-bull-canes", "eXtension Grapes, question and answer, \"What are bull canes and how do I handle them?\"",
    "https://grapes.extension.org/what-are-bull-canes-and-how-do-i-handle-them/", 'A'};
inline constexpr Source wineskills_factors{
    "wineskills-factors",
    "WineSkills (UK vine-growing knowledge base), \"Factors to be taken into account when pruning\"",
    "https://wineskills.co.uk/vinegrowing/vinegrowing-knowledge-base/factors-be-taken-account-when-pruning", 'A'};
inline constexpr Source wineskills_shape{"wineskills-shape",
                                         "WineSkills (UK vine-growing knowledge base), \"Plant shape / Canopy shape\"",
                                         "https://wineskills.co.uk/node/418", 'A'};
inline constexpr Source eltom_2015{
    "eltom-2015",
    "M. Eltom, C. Winefield, M. Trought, \"Influence of cane diameter on gross profit\", Practical Winery & "
    "Vineyard in Wines & Vines, Feb 2015, pp 54-57",
    "https://winesandvines.uberflip.com/i/450857/53", 'A'};
inline constexpr Source eltom_2014{
    "eltom-2014",
    "Eltom, Winefield, Trought, pruning system, cane size and season on inflorescence primordia, "
    "2014 (abstract)",
    "https://researcharchive.lincoln.ac.nz/handle/10182/6810", 'A'};
inline constexpr Source trought_2017{"trought-2017", "M. Trought, Wines & Vines, June 2017, pp 56-58",
                                     "https://winesandvines.uberflip.com/i/830382/55", 'A'};
inline constexpr Source epee_2022{
    "epee-2022",
    "P. Epee et al., OENO One 56(4), 2022, cane- and spur-retained node numbers, Sauvignon blanc (abstract)",
    "https://oeno-one.eu/article/view/5530", 'A'};
inline constexpr Source greven_2014{
    "greven-2014",
    "Greven, Bennett, Neal, \"Influence of retained node number on Sauvignon Blanc...\", Aust. J. "
    "Grape Wine Res., 2014 (abstract)",
    "https://onlinelibrary.wiley.com/doi/10.1111/ajgw.12074/abstract", 'A'};
inline constexpr Source smith_2023{
    "smith-2023", "M. Smith (Ohio State University), \"2023 Grape Pruning Primer\"",
    "https://ohiograpeweb.cfaes.ohio-state.edu/blog/march-15-2023-1225pm/2023-grape-pruning-primer", 'A'};
inline constexpr Source wvda_grapes{"wvda-grapes", "West Virginia Department of Agriculture, \"Growing Grapes in WV\"",
                                    "https://yumpu.com/en/document/view/40488802", 'A'};
inline constexpr Source zabadal_2002{
    "zabadal-2002",
    "T. Zabadal, \"Growing Table Grapes in a Temperate Climate\", MSU E2774, 2002 (as a web copy in steps)",
    "https://grovida.us/growing-table-grapes", 'A'};
inline constexpr Source hickey_psu{
    "hickey-psu", "C. Hickey (Penn State), \"Grapevine Cane and Spur Pruning Fundamentals\", recorded lesson",
    "https://extension.psu.edu/grapevine-cane-and-spur-pruning-fundamentals", 'A'};
inline constexpr Source klodd_2022{
    "klodd-2022", "A. Klodd (University of Minnesota), pruning questions, The Grapevine Magazine, Nov 2022",
    "https://thegrapevinemagazine.net/2022/11/frequently-asked-questions-for-pruning-grapevines/", 'A'};
inline constexpr Source ncsu_handbook{"ncsu-handbook", "N.C. State Extension Gardener Handbook, Fig. 14-33",
                                      "https://content.ces.ncsu.edu/print_image/5143", 'A'};
inline constexpr Source umn_2025{"umn-2025", "University of Minnesota, vine blog, 2025, cane wrapped round the wire",
                                 "-", 'A'};
inline constexpr Source todaro_tying{"todaro-tying",
                                     "T. Todaro (MSU), \"Five tips for tying grapevines\", Good Fruit Grower",
                                     "https://goodfruit.com/five-tips-for-tying-grapevines/", 'A'};
inline constexpr Source faundez_2021{"faundez-2021", "P. Faundez-Lopez et al., Vitis 60:137-141, 2021 (abstract)",
                                     "https://doi.org/10.5073/VITIS.2021.60.137-141", 'A'};
inline constexpr Source ugniblanc_oeno{
    "ugniblanc-oeno", "\"Importance of quality maintenance pruning for young Ugni blanc\", OENO One (abstract)",
    "https://oeno-one.eu/article/view/8101", 'A'};
inline constexpr Source ives_8418{
    "ives-8418",
    "IVES Technical Reviews 8418, \"Part 1: Is there a correlation between the diameter of the pruning wound "
    "and the length of the desiccation cone?\"",
    "https://ives-technicalreviews.eu/article/view/8418", 'A'};
inline constexpr Source sosnowski_2023{"sosnowski-2023", "M. Sosnowski (SARDI), via Vinehealth Australia, 2023",
                                       "https://vinehealth.com.au/2023/07/", 'A'};
inline constexpr Source torres_ucce{"torres-ucce", "G. Torres (UCCE), \"Pruning and Trunk Diseases\"",
                                    "https://sjvtandv.com/blog/pruning-and-trunk-diseases", 'A'};
inline constexpr Source oxford_2006{"oxford-2006",
                                    "Oxford Companion to Wine, 2006, entries internode, cane pruning, spur pruning",
                                    "https://app.ckbk.com/reference/wine05383", 'A'};
inline constexpr Source bourgogne_cane{"bourgogne-cane", "Bourgogne Wines glossary, \"Cane\"",
                                       "https://bourgogne-wines.com/glossary/cane,2532", 'A'};
inline constexpr Source hedrick_manual{"hedrick-manual", "U. P. Hedrick, Manual of American Grape-Growing",
                                       "https://bitlit.ru/page/en/u-p-hedrick/manual-of-american-grape-growing", 'A'};
inline constexpr Source westover_2016{"westover-2016",
                                      "F. Westover, \"The Proof Is in the Pruning\", Wines & Vines, May 2016, pp 28-29",
                                      "https://winesandvines.uberflip.com/i/670981/27", 'B'};
inline constexpr Source smart_2013{"smart-2013",
                                   "R. Smart, \"Golden Rules\", Practical Winery & Vineyard, Jul 2013, p 69",
                                   "https://winesandvines.uberflip.com/i/137110/68", 'B'};
inline constexpr Source deloire_2021{"deloire-2021", "A. Deloire, technical note on pruning principles, 25 Nov 2021",
                                     "-", 'B'};
inline constexpr Source vineworks_spec{"vineworks-spec",
                                       "VineWorks (UK contractor), written pruning specification, \"In review\"",
                                       "https://vine-works.com/blogs/advice/in-review", 'B'};
inline constexpr Source vineworks_tying{"vineworks-tying",
                                        "VineWorks (UK contractor), \"Top tips for tying down your vineyard\"",
                                        "https://fruitandvine.co.uk/top-tips-for-tying-down-your-vineyard/", 'B'};
inline constexpr Source naylor_nz{"naylor-nz", "A. Naylor, interview, Grapegrower & Winemaker",
                                  "https://winetitles.com.au/features/?VIEW=14", 'B'};
inline constexpr Source hutchinsons_uk{"hutchinsons-uk",
                                       "Hutchinsons agronomists, Vineyard Magazine (UK), \"Focusing on pruning\"",
                                       "https://vineyardmagazine.co.uk/agronomy/focusing-on-pruning", 'B'};
inline constexpr Source vineyardmag_five{"vineyardmag-five", "Vineyard Magazine (UK), \"five steps\"",
                                         "https://vineyardmagazine.co.uk", 'B'};
inline constexpr Source marlborough_2023{"marlborough-2023", "Marlborough Weekly, trunk disease column, 15 Aug 2023",
                                         "https://issuu.com/marlboroughweekly/docs/mwked1-20230815/s/29894118", 'B'};
inline constexpr Source coolclimate{"coolclimate", "Cool Climate Classroom (AU), \"Pruning\"",
                                    "https://coolclimateclassroom.com/viticulture/pruning", 'B'};
inline constexpr Source sabrosia_2011{"sabrosia-2011",
                                      "sabrosiavit (viticulture lecturer, Lincoln NZ), shoot thinning, 12 Nov 2011",
                                      "https://sabrosiavit.blogspot.com/2011/11/", 'B'};
inline constexpr Source winegrowers_info{"winegrowers-info", "winegrowers.info (UK), growing notes",
                                         "https://winegrowers.info/training", 'B'};
inline constexpr Source oenopedia_sap{"oenopedia-sap", "oenopedia (FR), respecting sap flow", "https://oenopedia.com",
                                      'B'};
inline constexpr Source horticulture_ppp{"horticulture-ppp", "\"Horticulture: Plants for People and Places\"",
                                         "https://what-when-how.com", 'B'};
inline constexpr Source sabbatini{"sabbatini", "Sabbatini, shoots per metre, Wine & Craft Beverage News",
                                  "https://wineandcraftbeveragenews.com", 'B'};
inline constexpr Source auburn_2021{"auburn-2021", "Finger Lakes wine column, Auburn Citizen, 26 Mar 2021",
                                    "https://auburnpub.com", 'C'};
inline constexpr Source lokkelebery{"lokkelebery", "Report of a training day, lokkelebery.co.uk",
                                    "https://lokkelebery.co.uk", 'C'};
inline constexpr Source grovida_mature{"grovida-mature", "\"Pruning mature vines\", grovida.us",
                                       "https://grovida.us/growing-fruit/pruning-mature-vines", 'C'};
inline constexpr Source houseofvines{"houseofvines", "Grower's blog, houseofvines", "-", 'C'};
inline constexpr Source home_98905{"home-98905", "Home page on grapes, 98905.com", "https://98905.com", 'C'};
inline constexpr Source vinsanity_2013{"vinsanity-2013", "Napa grower's blog, Feb 2013",
                                       "https://vinsanity-vino.blogspot.com/2013/02", 'C'};
inline constexpr Source jones_2012{"jones-2012", "Jones Family Farms, Connecticut, 2012", "-", 'C'};
inline constexpr Source waterpaths{"waterpaths", "Grower, Oregon, waterpaths.org", "https://waterpaths.org", 'C'};
inline constexpr Source finegardening{"finegardening", "Fine Gardening, tools to diameter", "https://finegardening.com",
                                      'C'};
inline constexpr Source experts123{"experts123", "experts123, tools to diameter", "-", 'C'};
inline constexpr Source boundarybreaks{"boundarybreaks", "boundarybreaks.com, share of wood removed",
                                       "https://boundarybreaks.com", 'C'};
inline constexpr Source ehow{"ehow", "ehow, share of wood removed", "-", 'C'};
inline constexpr Source mclaren_2013{"mclaren-2013", "McLaren Vale competition rules, 2013",
                                     "https://djsgrowers.blogspot.com/2013/08/", 'B'};
inline constexpr Source cooksplace_2013{"cooksplace-2013", "Grower's page, cooksplace.us, 2013", "https://cooksplace.us", 'C'};
inline constexpr Source neilsperry{"neilsperry", "Texas garden writer, neilsperry.com", "https://neilsperry.com", 'C'};

inline constexpr Source cornell_nny_2014{
    "cornell-nny-2014",
    "Cornell Cooperative Extension, Northern NY Grape Update, \"Evaluating Bud Injury and Adjusting Pruning\", 28 Feb "
    "2014",
    "https://blogs.cornell.edu/nnygrapeupdate/2014/02/28/", 'A'};
inline constexpr Source purdue_double{
    "purdue-double",
    "Purdue, Facts for Fancy Fruit, \"Pruning to adjust for winter injury and avoid spring frost damage to grapes\"",
    "https://fff.hort.purdue.edu/article/pruning-to-adjust-for-winter-injury-and-avoid-spring-frost-damage-to-grapes/",
    'A'};
inline constexpr Source taylor_2012{
    "taylor-2012",
    "J. Taylor, T. Bates, \"Sampling and Estimating Average Pruning Weights in Concord\", Am. J. Enol. Vitic. "
    "63:559-563, 2012 (abstract)",
    "https://www.ajevonline.org/content/63/4/559", 'A'};
inline constexpr Source fiola_2021{
    "fiola-2021", "J. Fiola, University of Maryland, \"Balanced Pruning I\", 2021",
    "https://extension.umd.edu/resource/balanced-pruning-i-critical-step-maintaining-and-adjusting-vine-balance", 'A'};
inline constexpr Source cornell_fifteen{"cornell-fifteen",
                                        "Cornell Lake Erie programme (T. Bates), \"Vine Size: Magic Number 15\"",
                                        "https://efficientvineyard.com/blog/vine-size-magic-number-15", 'A'};
inline constexpr Source california_trunk{
    "california-trunk", "Trunk disease management in California",
    "https://treeandvinetrunkdiseases.org/trunk-disease-management-in-california", 'A'};
inline constexpr Source vineworks_frost{
    "vineworks-frost", "VineWorks, \"Pruning techniques to help mitigate frost damage\"",
    "https://vine-works.com/articles/pruning-techniques-to-help-mitigate-frost-damage/", 'B'};
inline constexpr Source pwv_2009{"pwv-2009", "Practical Winery, Nov/Dec 2009, kicker canes",
                                 "https://practicalwinery.com", 'B'};
inline constexpr Source monviti_guyot{"monviti-guyot", "mon-viti, Guyot-Poussard", "https://mon-viti.com", 'B'};
inline constexpr Source venesemprendedores{"venesemprendedores", "Pruning weight and buds per kg (in Spanish)", "-", 'B'};
inline constexpr Source prieure_roch{"prieure-roch", "Domaine Prieure-Roch, pruning films",
                                     "https://domaine-prieure-roch.com", 'C'};

// Each work once.
inline constexpr std::array all{
    &hellman_2019,
    &hellman_tamu,
    &extension_bull_canes,
    &wineskills_factors,
    &wineskills_shape,
    &eltom_2015,
    &eltom_2014,
    &trought_2017,
    &epee_2022,
    &greven_2014,
    &smith_2023,
    &wvda_grapes,
    &zabadal_2002,
    &hickey_psu,
    &klodd_2022,
    &ncsu_handbook,
    &umn_2025,
    &todaro_tying,
    &faundez_2021,
    &ugniblanc_oeno,
    &ives_8418,
    &sosnowski_2023,
    &torres_ucce,
    &oxford_2006,
    &bourgogne_cane,
    &hedrick_manual,
    &westover_2016,
    &smart_2013,
    &deloire_2021,
    &vineworks_spec,
    &vineworks_tying,
    &naylor_nz,
    &hutchinsons_uk,
    &vineyardmag_five,
    &marlborough_2023,
    &coolclimate,
    &sabrosia_2011,
    &winegrowers_info,
    &oenopedia_sap,
    &horticulture_ppp,
    &sabbatini,
    &auburn_2021,
    &lokkelebery,
    &grovida_mature,
    &houseofvines,
    &home_98905,
    &vinsanity_2013,
    &jones_2012,
    &waterpaths,
    &finegardening,
    &experts123,
    &boundarybreaks,
    &ehow,
    &neilsperry,
    &mclaren_2013,
    &cooksplace_2013,
    &cornell_nny_2014,
    &purdue_double,
    &taylor_2012,
    &fiola_2021,
    &cornell_fifteen,
    &california_trunk,
    &vineworks_frost,
    &pwv_2009,
    &monviti_guyot,
    &venesemprendedores,
    &prieure_roch,
};

}  // namespace spurwright::sources

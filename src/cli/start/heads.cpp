#include "cli/start/heads.h"

namespace kerfpacket::cli {

const std::vector<Head>& heads() {
    // clang-format off
    static const std::vector<Head> all{
        {"segmental", {R"(  _.---._  )", R"( '       ' )"},
         {{"span", "45 in"}, {"rise", "9 1/2 in"}}},
        {"semicircular", {R"(   .---.   )", R"(  (     )  )"},
         {{"span", "43 in"}, {"spacing", "1/4 in"}}},
        {"elliptical", {R"( .-------. )", R"((         ))"},
         {{"span", "52 in"}, {"rise", "21 in"}}},
        {"three-centred", {R"( .-'"""'-. )", R"(|         |)"},
         {{"span", "54 in"}, {"rise", "20 in"}}},
        {"pointed", {R"(    .^.    )", R"(   /   \   )"},
         {{"span", "41 in"}, {"rise", "33 in"}}},
        {"tudor", {R"( _.--^--._ )", R"(/         \)"},
         {{"span", "57 in"}, {"rise", "24 in"}}},
        {"parabolic", {R"(    .-.    )", R"(   /   \   )"},
         {{"span", "47 in"}, {"rise", "22 in"}}},
        {"catenary", {R"(   .---.   )", R"(  /     \  )"},
         {{"span", "44 in"}, {"rise", "26 in"}}},
        {"horseshoe", {R"(  .-----.  )", R"(  '.   .'  )"},
         {{"span", "39 in"}, {"rise", "27 in"}}},
        {"eyebrow", {R"(   _.-._   )", R"(--'     '--)"},
         {{"span", "66 in"}, {"rise", "9 in"}}},
        {"ordinates", {R"(  . ' ' .  )", R"( :  : :  : )"},
         {{"points", "0, 0"}, {"points", "5, 7 1/4"}, {"points", "11, 11 3/8"}, {"points", "18, 13 7/8"},
          {"points", "25, 14 5/16"}, {"points", "32, 13 1/8"}, {"points", "39, 9 7/8"},
          {"points", "44, 5 3/4"}, {"points", "48, 0"}, {"points", ""}}},
    };
    // clang-format on
    return all;
}

}  // namespace kerfpacket::cli

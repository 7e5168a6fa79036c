namespace Graspwright.Hand;

/// <summary>The file a new hand begins with. Its values are invented.</summary>
public static class Starter
{
    /// <summary>The text.</summary>
    public const string Text =
        """
        # A hand to begin with. Every value here is invented: measure yours and write it in its place.
        # Values carry their unit: "12 mm", "0.5 in", "38 deg", "20 N". Decimal point, no comma.
        #
        # Places are [x, y] from the wrist's bending axis with the hand straight and open:
        # x toward the fingertips, y toward the back of the hand.
        #
        # These dozen decide most. Measure them first:
        #    1  wearer.side             left or right
        #    2  wearer.hand_breadth     across the knuckles, sliding calliper
        #    3  wrist.travel            how far the wrist bends with the cuff on
        #    4  pull_link.anchor        anchor on the forearm cuff
        #    5  crank.fulcrum           pivot of the bell crank
        #    6  crank.input             pin of the pull link, from the fulcrum
        #    7  crank.output            pin toward the rail, from the fulcrum
        #    8  rail.rest, rail.travel  carriage pin with the hand open, and how far it runs
        #    9  palm.point              a point of the palm on which things rest
        #   10  fingers … knuckle       wrist axis to each knuckle axis
        #   11  fingers … length        each knuckle axis to the fingertip
        #   12  fingers … arm           arm of the pull at the knuckle
        # What is left out is guessed, and the program lists each guess: "guessed, measure it".

        name = "first hand"

        [wearer]
        side = "right"
        hand_breadth = "84 mm"

        [wrist]
        drive = "flexion"          # palm toward forearm; or "extension"
        travel = "36 deg"
        # all_day_share = "18 %"   # share of your strength you can repeat all day

        [palm]
        point = ["0 mm", "-14 mm"]

        [pull_link]
        anchor = ["-48 mm", "27 mm"]

        [crank]
        fulcrum = ["22 mm", "21 mm"]
        input = ["3 mm", "17 mm"]
        output = ["5 mm", "13 mm"]
        # [crank.slot]             # a load-sensing arm: direction, length, preload, rate, turn

        [rail]
        rest = ["62 mm", "31 mm"]
        travel = "24 mm"

        [fingers.all]              # for every finger that does not say otherwise
        arm = "10 mm"

        [fingers.index]            # thumb side first
        knuckle = ["92 mm", "1 mm"]
        length = "86 mm"

        [fingers.middle]
        knuckle = ["95 mm", "2 mm"]
        length = "94 mm"

        [fingers.ring]
        knuckle = ["91 mm", "1 mm"]
        length = "88 mm"

        [fingers.little]
        knuckle = ["84 mm", "-1 mm"]
        length = "70 mm"

        [objects.handle]
        shape = "cylinder"
        diameter = "32 mm"
        station = "74 mm"          # along the palm line from its point

        [objects.mug]
        shape = "cylinder"
        diameter = "62 mm"
        station = "72 mm"

        [locks.two_held]           # ring and little finger held from the start
        ring = { pull = "holds pull" }
        little = { pull = "holds pull" }

        """;
}

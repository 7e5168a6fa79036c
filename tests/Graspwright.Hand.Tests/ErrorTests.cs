namespace Graspwright.Hand.Tests;

/// <summary>Every kind of error, with its place and its words.</summary>
public sealed class ErrorTests
{
    public static TheoryData<string, string, string> Changes() => new()
    {
        // a bare number, a comma, a wrong dimension, a wrong sign
        { "travel = \"36 deg\"", "travel = 36", "hand.toml(30,10): wrist.travel: found 36, a number without a unit; allowed: an angle as text with a unit (deg, rad, mrad); fix: add the unit: write \"36 deg\"" },
        { "travel = \"36 deg\"", "travel = \"36,5 deg\"", "hand.toml(30,10): wrist.travel: found \"36,5 deg\"; allowed: an angle as text with a unit (deg, rad, mrad); fix: a comma is not a decimal point: write \"36.5 deg\"" },
        { "travel = \"36 deg\"", "travel = \"36 mm\"", "hand.toml(30,10): wrist.travel: found \"36 mm\"; allowed: an angle as text with a unit (deg, rad, mrad); fix: mm is a length, an angle is wanted here" },
        { "travel = \"36 deg\"", "travel = \"-36 deg\"", "hand.toml(30,10): wrist.travel: found \"-36 deg\"; allowed: above 0, at most 180 deg; fix: measure it again or check the sign and the unit, such as \"38 deg\"" },
        { "travel = \"36 deg\"", "travel = nan", "hand.toml(30,10): wrist.travel: found nan, no finite number; allowed: an angle as text with a unit (deg, rad, mrad); fix: write \"38 deg\"" },
        { "travel = \"36 deg\"", "travel = \"nan deg\"", "hand.toml(30,10): wrist.travel: found \"nan deg\"; allowed: an angle as text with a unit (deg, rad, mrad); fix: write a finite number" },
        { "travel = \"36 deg\"", "travl = \"36 deg\"", "hand.toml(30,1): wrist.travl: found the unknown key travl; allowed: drive, start, travel, squeeze_share, all_day_share, speed, capacity; fix: did you mean travel?" },
        { "travel = \"36 deg\"", "travel = 36 deg", "hand.toml(30,13): travel: found 36 deg; allowed: text in quotes with a unit; fix: put it in quotes: write travel = \"36 deg\"" },
        { "travel = \"36 deg\"", "travel = 36,5", "hand.toml(30,12): travel: found 36,5; allowed: text in quotes with a unit, decimal point; fix: a comma is not a decimal point: write travel = \"36.5\"" },
        { "travel = \"36 deg\"", "travel = \"36 deg\"\ntravel = \"37 deg\"", "hand.toml(31,1): wrist.travel: found wrist.travel a second time; allowed: each key and each table once; fix: remove one; the first is in line 30" },
        { "travel = \"36 deg\"", "travel = \"36 deg\"\nall_day_share = \"60 %\"", "hand.toml(28,2): wrist.squeeze_share: found 50 %, below the all-day share of 60 %; allowed: at least the all-day share; fix: swap the two or measure again" },
        { "travel = \"36 deg\"", "travel = \"36 deg\"\ncapacity.flexion = [[\"40 deg\", \"12 N·m\"], [\"0 deg\", \"11 N·m\"]]", "hand.toml(31,44): wrist.capacity.flexion[2][1]: found \"0 deg\"; allowed: angles that rise from pair to pair; fix: put the pairs in order of angle, each angle once" },

        // text that is not TOML
        { "travel = \"36 deg\"", "travel = \"36 deg", "hand.toml(30,17): found travel = \"36 deg; allowed: TOML 1.0: [section] or key = value; fix: close the quotes on the line where they open" },
        { "travel = \"36 deg\"", "travel: 36 deg", "hand.toml(30,7): found travel: 36 deg; allowed: TOML 1.0: [section] or key = value; fix: write key = value, text and quantities in quotes" },
        { "[wrist]", "[wrist", "hand.toml(28,7): found [wrist; allowed: TOML 1.0: [section] or key = value; fix: close the bracket: write [wrist]" },
        { "[\"22 mm\", \"21 mm\"]", "[22 mm, 21 mm]", "hand.toml(40,15): found fulcrum = [22 mm, 21 mm]; allowed: TOML 1.0: [section] or key = value; fix: put each value in quotes: write fulcrum = [\"22 mm\", \"21 mm\"]" },
        { "[\"22 mm\", \"21 mm\"]", "[\"22 mm\" \"21 mm\"]", "hand.toml(40,20): found fulcrum = [\"22 mm\" \"21 mm\"]; allowed: TOML 1.0: [section] or key = value; fix: put a comma between the values" },

        // words, lists, tables
        { "side = \"right\"", "side = \"rigt\"", "hand.toml(25,8): wearer.side: found \"rigt\"; allowed: \"left\" or \"right\"; fix: write \"right\"" },
        { "side = \"right\"", "side = true", "hand.toml(25,8): wearer.side: found true, a truth value; allowed: \"left\" or \"right\"; fix: write \"left\"" },
        { "anchor = [\"-48 mm\", \"27 mm\"]", "anchor = [\"-48 mm\"]", "hand.toml(37,10): pull_link.anchor: found a list of 1; allowed: a list of two, x (distal) and y (dorsal); fix: write [\"-45 mm\", \"28 mm\"]" },
        { "anchor = [\"-48 mm\", \"27 mm\"]", "anchor = [\"-48 mm\", \"27 m\"]", "hand.toml(37,21): pull_link.anchor.y: found \"27 m\"; allowed: a length of at most 10 m; fix: check the number and the unit, such as [\"-45 mm\", \"28 mm\"]" },
        { "anchor = [\"-48 mm\", \"27 mm\"]", "anchor = [\"-48 mm\", 27]", "hand.toml(37,21): pull_link.anchor.y: found 27, a number without a unit; allowed: a length as text with a unit (mm, cm, m, in, μm); fix: add the unit: write \"27 mm\"" },

        // what is missing
        { "fulcrum = [\"22 mm\", \"21 mm\"]", "", "hand.toml(39,2): crank.fulcrum: found nothing; allowed: Fulcrum; fix: measure it and add fulcrum = [\"20 mm\", \"20 mm\"] to [crank]" },
        { "input = [\"3 mm\", \"17 mm\"]", "", "hand.toml(39,2): crank.input: found nothing; allowed: either input, or input_arm with input_angle; fix: measure the input pin from the fulcrum and add input = [\"3 mm\", \"18 mm\"] to [crank]" },

        // geometry
        { "input = [\"3 mm\", \"17 mm\"]", "input = [\"0 mm\", \"0 mm\"]", "hand.toml(41,9): crank.input: found the same place as the fulcrum; allowed: an input arm longer than 0; fix: measure both again" },
        { "anchor = [\"-48 mm\", \"27 mm\"]", "anchor = [\"25 mm\", \"38 mm\"]", "hand.toml(37,10): pull_link.anchor: found the same place as the crank's input pin; allowed: a pull link longer than 0; fix: measure both again" },
        { "anchor = [\"-48 mm\", \"27 mm\"]", "anchor = [\"-25 mm\", \"-38 mm\"]", "hand.toml(37,10): pull_link.anchor: found a pull link whose line runs through the wrist axis at rest; allowed: a line that passes the wrist axis at a distance; fix: move the anchor or the input pin: on that line the link has no arm" },
        { "fulcrum = [\"22 mm\", \"21 mm\"]", "fulcrum = [\"0 mm\", \"0 mm\"]", "hand.toml(40,11): crank.fulcrum: found the wrist axis; allowed: a fulcrum away from the wrist axis; fix: measure the fulcrum from the wrist axis" },
        { "rest = [\"62 mm\", \"31 mm\"]", "rest = [\"27 mm\", \"34 mm\"]", "hand.toml(46,8): rail.rest: found the same place as the crank's output pin; allowed: a transfer link longer than 0; fix: measure both again" },
        { "anchor = [", "slack = \"2 mm\"\nanchor = [", "hand.toml(37,9): pull_link.slack: found slack above 0 in a rod; allowed: slack above 0 in a cord only; fix: write kind = \"cord\", or slack = \"0 mm\"" },

        // fingers, tree, locks, objects
        { "[objects.handle]", "[balance]\nfirst = \"index\"\nsecond = \"midle\"\n[objects.handle]", "hand.toml(70,10): balance.second: found \"midle\", which is no finger; allowed: index, middle, ring, little; fix: did you mean middle?" },
        { "[objects.handle]", "[balance]\nfirst = \"index\"\nsecond = \"index\"\nfirst_arm = \"9 mm\"\nsecond_arm = \"9 mm\"\n[objects.handle]", "hand.toml(70,10): balance.second: found \"index\" a second time; allowed: each finger once; fix: name another finger here" },
        { "[objects.handle]", "[balance]\nfirst = \"index\"\nsecond = \"ring\"\n[objects.handle]", "hand.toml(68,2): balance: found no end that carries middle; allowed: each finger once; fix: add first = \"middle\" to a bar, or remove the finger" },
        { "ring = { pull", "rng = { pull", "hand.toml(79,1): locks.two_held.rng: found rng, which is no finger; allowed: index, middle, ring, little; fix: did you mean ring?" },
        { "diameter = \"32 mm\"", "", "hand.toml(68,10): objects.handle.diameter: found nothing; allowed: diameter of the object; fix: measure it and add diameter = \"60 mm\" to [objects.handle]" },
        { "diameter = \"32 mm\"", "diameter = \"32 mm\"\nthickness = \"3 mm\"", "hand.toml(71,13): objects.handle.thickness: found thickness of an object whose shape is cylinder; allowed: no thickness there; fix: remove it or change the shape" },
        { "[objects.mug]", "[objects.handle]", "hand.toml(73,1): objects.handle: found objects.handle a second time; allowed: each key and each table once; fix: remove one; the first is in line 68" },
        { "knuckle = [\"92 mm\", \"1 mm\"]", "knuckle = [\"92 mm\", \"1 mm\"]\nsegments = [\"45 mm\", \"25 mm\", \"0 mm\"]", "hand.toml(54,31): fingers.index.segments[3]: found \"0 mm\"; allowed: above 0; fix: measure it again or check the sign and the unit, such as [\"45 mm\", \"25 mm\", \"20 mm\"]" },
        { "arm = \"10 mm\"", "pad_stiffness = \"-1 N/mm\"", "hand.toml(50,17): fingers.all.pad_stiffness: found \"-1 N/mm\"; allowed: above 0; fix: measure it again or check the sign and the unit, such as \"12 N/mm\"" },

        { "[objects.handle]", "[friction]\npin = nan\n[objects.handle]", "hand.toml(69,7): friction.pin: found nan, no finite number; allowed: a plain number or a share in %; fix: write a finite number" },
        { "[objects.handle]", "[give]\ncuff = \"soft\"\n[objects.handle]", "hand.toml(69,8): give.cuff: found \"soft\"; allowed: a stiffness about an axis as text with a unit (N·m/deg, N·m/rad, N·mm/deg, N·mm/rad, lbf·in/deg), or \"rigid\"; fix: write a number and its unit, such as \"12 N·m/deg\"" },
        { "[objects.handle]", "[objects.sheet]\nshape = \"plate\"\npoint = [\"1 mm\", \"1 mm\"]\n[objects.handle]", "hand.toml(68,10): objects.sheet.normal: found nothing; allowed: normal of the object; fix: measure it and add normal = \"90 deg\" to [objects.sheet]" },
        { "station = \"74 mm\"", "station = \"74 mm\"\ncentre = [\"1 mm\", \"1 mm\"]", "hand.toml(68,10): objects.handle.station: found station beside centre; allowed: one of the two; fix: add station = \"73 mm\" if it lies on the palm line, else centre = [\"73 mm\", \"-42 mm\"]" },
        { "arm = \"10 mm\"", "arm = \"10 mm\"\narms = [\"10 mm\", \"0 mm\", \"0 mm\"]", "hand.toml(50,7): fingers.index.arm: found arm beside arms; allowed: one of the two; fix: remove arm: arms says it" },
        { "arm = \"10 mm\"", "joints = \"adaptive\"", "hand.toml(52,10): fingers.index.arms: found nothing; allowed: take-up arms at MCP, PIP, DIP of an adaptive finger; fix: measure them and add arms = [\"8 mm\", \"5 mm\", \"3 mm\"] to [fingers.index]" },
        { "[objects.handle]", "[[objects]]\n[objects.handle]", "hand.toml(68,3): objects: found a list of 1; allowed: a table; fix: write the section as [objects] with its keys below" },

        // tolerances and files
        { "[objects.handle]", "[tolerances]\n\"objects.cup.diameter\" = \"1 mm\"\n[objects.handle]", "hand.toml(69,1): tolerances.\"objects.cup.diameter\": found cup, which is no object; allowed: handle, mug; fix: add a section [objects.cup] or use one of these" },
        { "[objects.handle]", "[tolerances]\n\"fingers.indx.arm\" = \"1 mm\"\n[objects.handle]", "hand.toml(69,1): tolerances.indx: found indx, which is no finger; allowed: index, middle, ring, little; fix: did you mean index?" },
        { "[objects.handle]", "[tolerances]\n\"crank.fulcrm.x\" = \"0.2 mm\"\n[objects.handle]", "hand.toml(69,1): tolerances.\"crank.fulcrm.x\": found \"crank.fulcrm.x\"; allowed: the path of a value with a unit, in quotes; fix: write \"crank.fulcrum.x\"" },
        { "[objects.handle]", "[tolerances]\n\"crank.fulcrum.x\" = \"2 deg\"\n[objects.handle]", "hand.toml(69,21): tolerances.\"crank.fulcrum.x\": found \"2 deg\"; allowed: a length as text with a unit (mm, cm, m, in, μm); fix: deg is an angle, a length is wanted here" },
        { "[objects.handle]", "[files]\nreadings = \"../bench.csv\"\n[objects.handle]", "hand.toml(69,12): files.readings: found \"../bench.csv\"; allowed: a file inside the folder of the hand file; fix: copy the file into the folder of the hand file and write its name without .." },
        { "[objects.handle]", "[files]\nreadings = \"/etc/hosts\"\n[objects.handle]", "hand.toml(69,12): files.readings: found \"/etc/hosts\"; allowed: a file inside the folder of the hand file; fix: write the name relative to the hand file, without a leading / or drive" },
    };

    [Theory]
    [MemberData(nameof(Changes))]
    public void Says_where_what_and_how_to_mend_it(string from, string to, string message)
    {
        Assert.Contains(from, Starter.Text, StringComparison.Ordinal);
        int at = Starter.Text.IndexOf(from, StringComparison.Ordinal);
        HandReading reading = HandFile.Parse(Starter.Text[..at] + to + Starter.Text[(at + from.Length)..], "hand.toml");
        Assert.Null(reading.Hand);
        Assert.Contains(message, reading.Errors.Select(e => e.Message));
    }

    [Fact]
    public void Reports_all_errors_at_once_in_the_order_of_the_text()
    {
        string text = Starter.Text
            .Replace("side = \"right\"", "side = \"up\"", StringComparison.Ordinal)
            .Replace("travel = \"36 deg\"", "travel = 36", StringComparison.Ordinal)
            .Replace("arm = \"10 mm\"", "arm = \"10,5 mm\"", StringComparison.Ordinal);
        Assert.Equal(["wearer.side", "wrist.travel", "fingers.all.arm"], HandFile.Parse(text, "hand.toml").Errors.Select(e => e.Key));
    }

    [Fact]
    public void Lets_no_control_character_into_a_message()
    {
        IReadOnlyList<HandError> errors = HandFile.Parse("\"a\\u001bb\" = 1\nname = \"x\"\n[balance]\nfirst = \"\\u001b[2J\"\n[wrist]\ntravel = \"\\n\"\n", "hand.toml").Errors;
        Assert.Contains(errors, e => e.Found == "the unknown key a·b");
        Assert.All(errors, e => Assert.DoesNotContain(e.Message, char.IsControl));
    }

    [Fact]
    public void Asks_for_every_measurement_of_an_empty_file()
    {
        IReadOnlyList<HandError> errors = HandFile.Parse("", "hand.toml").Errors;
        Assert.Equal(
            ["crank.fulcrum", "crank.input", "crank.output", "fingers.NAME", "name", "palm.point", "pull_link.anchor", "rail.rest", "rail.travel", "wearer.side", "wrist.travel"],
            errors.Select(e => e.Key));
        Assert.All(errors, e => Assert.Equal("nothing", e.Found == "no finger" ? "nothing" : e.Found));
    }

    [Fact]
    public void Asks_for_arms_where_a_pairing_needs_stacked_bars()
    {
        string text = Starter.Text + "[balance]\nfirst = { first = \"index\", second = \"little\" }\nsecond = { first = \"middle\", second = \"ring\" }\n";
        HandError error = Assert.Single(HandFile.Parse(text, "hand.toml").Errors);
        Assert.Equal(("balance.first_arm", "this pairing needs stacked or unequal bars: add first_arm and second_arm"), (error.Key, error.Fix));
    }
}

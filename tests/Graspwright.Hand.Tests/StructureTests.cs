namespace Graspwright.Hand.Tests;

public sealed class StructureTests
{
    [Theory]
    [InlineData("[hinges.all]\near_thickness = \"0 mm\"\n", "hinges.all.ear_thickness", "above 0")]
    [InlineData("[hinges.index]\nfinger_material = \"petg-alon\"\n", "hinges.index.finger_material", "petg-along")]
    [InlineData("[hinges.thumb]\ngap = \"0 mm\"\n", "hinges.thumb", "index")]
    [InlineData("[hinges.all]\npin_diameter = \"12 mm\"\n", "hinges.index.pin_diameter", "smaller than ear_height")]
    [InlineData("[materials.mine]\nmodulus = \"2 GPa\"\n", "materials.mine.like", "petg-along")]
    [InlineData("[materials.brass]\nfatigue_strength = \"500 MPa\"\n", "materials.brass.fatigue_strength", "below 0.9")]
    [InlineData("[parts.eye]\nkind = \"eye\"\ncarries = \"pull link\"\nmaterial = \"brass\"\ndiameter = \"4 mm\"\nwidth = \"9 mm\"\nlength = \"6 mm\"\n", "parts.eye.thickness", "thickness")]
    [InlineData("[parts.eye]\nkind = \"eye\"\ncarries = \"pull link\"\nmaterial = \"brass\"\ndiameter = \"4 mm\"\nwidth = \"4 mm\"\nlength = \"6 mm\"\nthickness = \"2 mm\"\n", "parts.eye.width", "greater than the diameter")]
    [InlineData("[springs.slot]\nwire = \"1 mm\"\noutside = \"2 mm\"\ncoils = 8\nfree_length = \"20 mm\"\nfitted_length = \"18 mm\"\nstroke = \"3 mm\"\n", "springs.slot.outside", "twice the wire")]
    [InlineData("[springs.slot]\nwire = \"1 mm\"\noutside = \"8 mm\"\ncoils = 8\nfree_length = \"20 mm\"\nfitted_length = \"22 mm\"\nstroke = \"3 mm\"\n", "springs.slot.fitted_length", "at most the free length")]
    [InlineData("[use]\ngrips = -1\n", "use.grips", "0 or more")]
    [InlineData("[use]\ngentle = \"10 %\"\n", "use.gentle", "sum to 100 %")]
    [InlineData("[use]\noutdoors = \"9 h\"\n", "use.outdoors", "at most the hours worn")]
    [InlineData("[use.jobs.drink]\nobject = \"mugg\"\nper_day = 4\n", "use.jobs.drink.object", "mug")]
    [InlineData("[day]\ngrips = 420\n", "day", "[use]")]
    [InlineData("[jobs.drink]\nobject = \"mug\"\nload = \"1 kg\"\ntimes_a_day = 9\n[use.jobs.drink]\nobject = \"mug\"\nper_day = 4\n", "use.jobs.drink", "remove it here")]
    [InlineData("[jobs.drink]\nobject = \"mug\"\nload = \"1 kg\"\ntimes_a_day = 9\n[use]\ngrips = 8\n", "use.grips", "leave grips out")]
    [InlineData("[use.exposure]\nindex = \"50 %\"\n", "use.exposure", "sum to 100 %")]
    [InlineData("[use.knocks.hit]\nenergy = \"0 J\"\nper_day = 1\n", "use.knocks.hit.energy", "above 0")]
    public void Says_what_is_wrong_and_what_is_allowed(string section, string key, string allowed)
    {
        HandReading reading = HandFile.Parse(Starter.Text + "\n" + section, "hand.toml");
        HandError error = reading.Errors.First(e => e.Key == key);
        Assert.Contains(allowed, error.Allowed + error.Fix, StringComparison.Ordinal);
        Assert.True(error.Line > 1);
    }

    [Fact]
    public void A_material_of_ones_own_is_as_its_grade_but_for_what_is_given()
    {
        HandModel hand = HandFile.Parse(Starter.Text + "\n[materials.\"four walls\"]\nlike = \"petg-along\"\nstrength = \"42 MPa\"\n[hinges.all]\nfinger_material = \"four walls\"\n", "hand.toml").Hand!;
        Material own = Assert.Single(hand.Structure.Materials), grade = MaterialTable.Find("petg-along")!;
        Assert.Equal(42e6, own.Strength, 1e-3);
        Assert.Equal(grade.Modulus, own.Modulus);
        Assert.All(hand.Structure.Hinges, h => Assert.Equal("four walls", h.FingerMaterial));
    }

    [Fact]
    public void What_is_shared_by_all_fingers_gives_way_to_what_one_says()
    {
        HandModel hand = HandFile.Parse(Starter.Text + "\n[hinges.all]\near_thickness = \"4 mm\"\n[hinges.index]\near_thickness = [\"5 mm\", \"4 mm\", \"3 mm\"]\n", "hand.toml").Hand!;
        Assert.Equal(0.005, hand.Structure.Hinges.Single(h => h.Finger == "index").EarThickness.First, 1e-12);
        Assert.All(hand.Structure.Hinges.Where(h => h.Finger != "index"), h => Assert.Equal(0.004, h.EarThickness.First, 1e-12));
    }

    [Fact]
    public void Defaults_of_these_sections_are_told_apart_from_those_of_the_drive()
    {
        HandModel hand = HandFile.Parse(Starter.Text, "hand.toml").Hand!;
        Assert.Contains(hand.Structure.Guesses, g => g.Path == "hinges.all.ear_thickness");
        Assert.Contains(hand.Structure.Guesses, g => g.Path == "use.knocks");
        Assert.DoesNotContain(hand.Guesses, g => g.Path.StartsWith("use.", StringComparison.Ordinal) || g.Path.StartsWith("hinges.", StringComparison.Ordinal));
    }
}

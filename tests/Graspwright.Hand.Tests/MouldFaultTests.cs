namespace Graspwright.Hand.Tests;

/// <summary>Nonsense about liner, form and copies is explained, once, where it stands.</summary>
public sealed class MouldFaultTests
{
    private const string Label = "[liner.putty]\nwork_time = \"4 min\"\nset_time = \"12 min\"\nat = \"23 °C\"\n";

    private static IReadOnlyList<HandError> Errors(string more) => HandFile.Parse(Starter.Text + "\n" + more, "hand.toml").Errors;

    [Theory]
    [InlineData("[liner]\nthickness = \"3 mm\"\n", "liner.putty", "no label")]
    [InlineData("[liner.putty]\nwork_time = \"4 min\"\nset_time = \"12 min\"\n", "liner.putty.at", "minutes without a temperature")]
    [InlineData("[liner.putty]\nset_time = \"12 min\"\nat = \"23 °C\"\n", "liner.putty.work_time", "nothing")]
    [InlineData("[liner.putty]\nwork_time = \"12 min\"\nset_time = \"4 min\"\nat = \"23 °C\"\n", "liner.putty.work_time", "12 min, not before the set time of 4 min")]
    [InlineData(Label + "mix_time = \"5 min\"\n", "liner.putty.mix_time", "5 min, not before the work time of 4 min")]
    [InlineData(Label + "full_time = \"5 min\"\n", "liner.putty.full_time", "5 min, before the set time of 12 min")]
    [InlineData(Label + "ratio_b = 0\n", "liner.putty.ratio_b", "0, a number without a unit")]
    [InlineData(Label + "price = 12\n", "liner.putty.pack", "nothing")]
    [InlineData(Label + "[liner.bench]\nfreezer = \"-80 °C\"\n", "liner.bench.freezer", "\"-80 °C\"")]
    [InlineData(Label + "[liner.bench]\nhelpers = 1.5\n", "liner.bench.helpers", "1.5")]
    [InlineData(Label + "[liner]\nthickness = \"30 mm\"\nsheet_length = \"200 mm\"\nsheet_width = \"100 mm\"\n", "liner.thickness", "30 mm on a sheet of 100 mm")]
    [InlineData(Label + "[liner]\nsheet_length = \"200 mm\"\n", "liner.sheet_width", "nothing")]
    [InlineData("[form]\n", "form.marks", "no mark")]
    [InlineData("[form.marks]\na = { place = \"0 mm\", girth = \"170 mm\" }\nb = { place = \"90 mm\", girth = \"170 mm\" }\n[form.patches]\npad = { kind = \"contact\", from = \"10 mm\", to = \"20 mm\", angle_from = \"0 deg\", angle_to = \"20 deg\" }\n[form.wires]\nlead = { from = \"pda\", to = \"pad\" }\n", "form.wires.lead.from", "pda, which is no patch")]
    [InlineData("[form.marks]\na = { place = \"0 mm\", girth = \"170 mm\" }\nb = { place = \"90 mm\", girth = \"170 mm\" }\n[form.patches]\npad = { kind = \"contact\", from = \"10 mm\", to = \"20 mm\", angle_from = \"0 deg\", angle_to = \"20 deg\" }\n[form.wires]\nlead = { from = \"pad\" }\n", "form.wires.lead.to", "nothing")]
    [InlineData("[form.marks]\na = { place = \"0 mm\", girth = \"170 mm\" }\nb = { place = \"90 mm\", girth = \"170 mm\" }\n[form.patches]\npad = { kind = \"contact\", from = \"10 mm\", to = \"20 mm\", angle_from = \"0 deg\", angle_to = \"20 deg\" }\n[form.wires]\nlead = { from = \"pad\", to_place = \"50 mm\" }\n", "form.wires.lead.to_angle", "nothing")]
    [InlineData("[form.marks]\na = { place = \"0 mm\", girth = \"170 mm\" }\nb = { place = \"90 mm\", girth = \"170 mm\" }\n[form.patches]\npad = { kind = \"contact\", from = \"10 mm\", to = \"20 mm\", angle_from = \"0 deg\", angle_to = \"20 deg\" }\n[form.wires]\nlead = { from = \"pad\", from_angle = \"5 deg\", to = \"pad\" }\n", "form.wires.lead.from_angle", "a second spot beside from = \"pad\"")]
    [InlineData("[form.marks]\na = { place = \"0 mm\", girth = \"170 mm\", width = \"60 mm\" }\nb = { place = \"9 mm\", girth = \"170 mm\" }\n", "form.marks.a.depth", "nothing")]
    [InlineData("[form.marks]\na = { place = \"0 mm\", girth = \"270 mm\", width = \"60 mm\", depth = \"40 mm\" }\nb = { place = \"9 mm\", girth = \"170 mm\" }\n", "form.marks.a.girth", "270 mm round a width of 60 and a depth of 40 mm")]
    [InlineData("[form]\nfar_edge = \"20 mm\"\n[form.marks]\na = { place = \"0 mm\", girth = \"170 mm\" }\nb = { place = \"9 mm\", girth = \"170 mm\" }\n", "form.far_edge", "an edge beyond the marks")]
    [InlineData("[copies]\nwater_for_powder = 0.1\n", "copies.water_for_powder", "0.1, a number without a unit")]
    [InlineData("[tolerances]\n\"liner.bench.room\" = \"2 °C\"\n", "tolerances.\"liner.bench.room\"", "\"2 °C\"")]
    public void Explains(string text, string key, string found)
    {
        HandError error = Assert.Single(Errors(text));
        Assert.Equal((key, found), (error.Key, error.Found));
        Assert.True(error.Line > 0 && error.Column > 0 && error.Allowed.Length > 0 && error.Fix.Length > 0);
    }

    [Fact]
    public void Says_why_a_laboratory_freezer_is_none()
    {
        Assert.Contains("burns skin", Errors(Label + "[liner.bench]\nfreezer = \"-80 °C\"\n")[0].Allowed, StringComparison.Ordinal);
        Assert.Empty(Errors(Label + "[liner.bench]\nfreezer = \"-18 °C\"\n"));
    }

    [Fact]
    public void Reads_a_difference_of_temperature_as_one()
    {
        HandModel hand = HandFile.Parse(Starter.Text + "\n" + Label + "[tolerances]\n\"liner.bench.room\" = \"2 K\"\n", "hand.toml").Hand!;
        Assert.Equal(2, Assert.Single(hand.Tolerances).PlusMinus);
    }

    [Fact]
    public void A_hand_without_a_liner_guesses_none()
    {
        HandModel hand = HandFile.Parse(Starter.Text, "hand.toml").Hand!;
        Assert.Null(hand.Liner);
        Assert.DoesNotContain(hand.Guesses, g => g.Path.StartsWith("liner", StringComparison.Ordinal) || g.Path.StartsWith("copies", StringComparison.Ordinal));
    }
}

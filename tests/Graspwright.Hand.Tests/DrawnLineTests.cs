namespace Graspwright.Hand.Tests;

/// <summary>Lines drawn on the limb: edges, patches, the thumb's opening.</summary>
public sealed class DrawnLineTests
{
    private const string Marks = "[form.marks]\na = { place = \"-70 mm\", girth = \"200 mm\" }\nb = { place = \"80 mm\", girth = \"210 mm\" }\n";
    private const string Round = "[[\"70 mm\", \"0 deg\"], [\"70 mm\", \"120 deg\"], [\"60 mm\", \"240 deg\"]]";

    private static HandReading Read(string form, string rest = "") => HandFile.Parse(Starter.Text + "\n[form]\n" + form + "\n" + Marks + rest, "hand.toml");

    private static HandError Fault(string form, string rest = "") => Assert.Single(Read(form, rest).Errors);

    private static double Degrees(double degrees) => degrees * Math.PI / 180;

    private static LimbLine Line(params (double Mm, double Degrees)[] corners) => new([.. corners.Select(c => new LimbCorner(c.Mm / 1000, Degrees(c.Degrees)))]);

    [Fact]
    public void A_far_line_and_an_outline_are_read()
    {
        HandReading reading = Read("far_line = " + Round, "[form.patches]\nscar = { kind = \"scar\", outline = [[\"10 mm\", \"350 deg\"], [\"30 mm\", \"20 deg\"], [\"40 mm\", \"-10 deg\"]] }\n");
        Assert.Empty(reading.Errors);
        LimbForm form = reading.Hand!.Form!;
        Assert.Equal(3, form.FarLine.Count);
        Assert.Equal(0.06, form.FarLine[2].Place, 1e-12);
        // one third of the way round at 70 mm, two thirds at the mean of 70 and 60
        Assert.Equal((0.07 + 2 * 0.065) / 3, form.FarEdge, 1e-12);
        Assert.Equal(-0.07, form.NearEdge, 1e-12);
        LimbPatch scar = Assert.Single(form.Patches);
        Assert.Equal((0.01, 0.04), (scar.From, scar.To));
        // the shorter way from 350 to 20 degrees leads over 360
        Assert.Equal((Degrees(350), Degrees(380)), (scar.AngleFromRadians, scar.AngleToRadians), (a, b) => Math.Abs(a.Item1 - b.Item1) < 1e-9 && Math.Abs(a.Item2 - b.Item2) < 1e-9);
    }

    [Theory]
    [InlineData("far_line = [[\"70 mm\", \"0 deg\"], [\"70 mm\", \"120 deg\"]]", "form.far_line", "a list of 2")]
    [InlineData("far_line = \"70 mm\"", "form.far_line", "\"70 mm\"")]
    [InlineData("far_line = [[\"70 mm\", \"0 deg\"], [\"70 mm\"], [\"60 mm\", \"240 deg\"]]", "form.far_line[2]", "a list of 1")]
    [InlineData("far_line = [[\"70 mm\", \"0 deg\"], [\"70 deg\", \"120 deg\"], [\"60 mm\", \"240 deg\"]]", "form.far_line[2][1]", "\"70 deg\"")]
    [InlineData("far_line = [[\"70 mm\", \"0 deg\"], [\"70 mm\", \"720 deg\"], [\"60 mm\", \"240 deg\"]]", "form.far_line[2][2]", "\"720 deg\"")]
    [InlineData("far_edge = \"80 mm\"\nfar_line = " + Round, "form.far_edge", "far_edge beside far_line")]
    [InlineData("far_line = [[\"70 mm\", \"0 deg\"], [\"60 mm\", \"40 deg\"], [\"50 mm\", \"20 deg\"]]", "form.far_line", "a line that goes not at all round the limb")]
    [InlineData("far_line = [[\"70 mm\", \"0 deg\"], [\"69 mm\", \"120 deg\"], [\"68 mm\", \"240 deg\"], [\"50 mm\", \"1 deg\"], [\"49 mm\", \"121 deg\"], [\"48 mm\", \"241 deg\"], [\"60 mm\", \"359 deg\"]]", "form.far_line[3]", "a line that crosses or touches itself: beyond corner 3 and beyond corner 6")]
    [InlineData("far_line = [[\"70 mm\", \"0 deg\"], [\"70 mm\", \"180 deg\"], [\"60 mm\", \"240 deg\"]]", "form.far_line[1]", "half a turn to the next corner, so that its way round is in doubt")]
    [InlineData("far_line = [[\"70 mm\", \"0 deg\"], [\"70 mm\", \"0 deg\"], [\"70 mm\", \"120 deg\"], [\"60 mm\", \"240 deg\"]]", "form.far_line[1]", "a corner that is written twice")]
    [InlineData("far_line = [[\"70 mm\", \"0 deg\"], [\"95 mm\", \"120 deg\"], [\"60 mm\", \"240 deg\"]]", "form.far_line[2]", "a corner at 95 mm, beyond the marks")]
    [InlineData("near_line = [[\"-60 mm\", \"0 deg\"], [\"75 mm\", \"120 deg\"], [\"-60 mm\", \"240 deg\"]]\nfar_line = " + Round, "form.far_line[1]", "an edge that meets the other edge of the liner between this corner and the next")]
    [InlineData("near_edge = \"65 mm\"\nfar_line = " + Round, "form.far_line[2]", "an edge that meets the other edge of the liner between this corner and the next")]
    [InlineData("near_edge = \"75 mm\"\nfar_line = " + Round, "form.near_edge", "an edge toward the elbow that lies beyond the one toward the fingertips")]
    public void An_edge_that_cannot_be_cut_is_explained(string form, string key, string found)
    {
        HandError error = Fault(form);
        Assert.Equal((key, found), (error.Key, error.Found));
        Assert.True(error.Line > 1 && error.Column > 0 && error.Allowed.Length > 0 && error.Fix.Length > 0);
        Assert.Equal("hand.toml", error.File);
    }

    [Theory]
    [InlineData("outline = [[\"10 mm\", \"0 deg\"], [\"30 mm\", \"30 deg\"], [\"30 mm\", \"0 deg\"], [\"10 mm\", \"30 deg\"]]", "outline[1]", "a line that crosses or touches itself: beyond corner 1 and beyond corner 3")]
    [InlineData("outline = [[\"10 mm\", \"0 deg\"], [\"10 mm\", \"120 deg\"], [\"10 mm\", \"240 deg\"]]", "outline", "a line that goes once round the limb")]
    [InlineData("outline = [[\"90 mm\", \"0 deg\"], [\"95 mm\", \"20 deg\"], [\"99 mm\", \"0 deg\"]]", "outline", "an outline from 90 to 99 mm, which misses the limb")]
    [InlineData("outline = [[\"10 mm\", \"0 deg\"], [\"20 mm\", \"0 deg\"], [\"30 mm\", \"0 deg\"]]", "outline[1]", "a line that crosses or touches itself: beyond corner 1 and beyond corner 3")]
    [InlineData("outline = [[\"10 mm\", \"0 deg\"], [\"20 mm\", \"0 deg\"], [\"15 mm\", \"0.001 deg\"]]", "outline", "corners in one line")]
    [InlineData("from = \"10 mm\", outline = [[\"10 mm\", \"0 deg\"], [\"20 mm\", \"20 deg\"], [\"30 mm\", \"0 deg\"]]", "from", "from beside an outline")]
    [InlineData("from = \"10 mm\", to = \"20 mm\", angle_from = \"0 deg\"", "angle_to", "nothing")]
    public void A_patch_that_cannot_be_drawn_is_explained(string patch, string key, string found)
    {
        HandError error = Fault("", "[form.patches]\nscar = { kind = \"scar\", " + patch + " }\n");
        Assert.Equal(("form.patches.scar." + key, found), (error.Key, error.Found));
        Assert.True(error.Line > 1 && error.Fix.Length > 0);
    }

    [Fact]
    public void An_opening_beside_a_sleeve_is_refused() =>
        Assert.Equal("form.pattern.opening", Fault("", "[form.pattern]\nthumb = \"sleeve\"\nopening = [[\"10 mm\", \"60 deg\"], [\"30 mm\", \"90 deg\"], [\"10 mm\", \"120 deg\"]]\n").Key);

    [Fact]
    public void Too_many_corners_are_refused_at_once()
    {
        string many = string.Join(", ", Enumerable.Range(0, 100_000).Select(i => "[\"1 mm\", \"2 deg\"]"));
        Assert.Equal("a list of 100000", Fault($"far_line = [{many}]").Found);
    }

    [Fact]
    public void Lines_come_back_as_they_were_written_and_can_be_set_by_path()
    {
        HandReading reading = Read("far_line = " + Round, "[form.patches]\nscar = { kind = \"scar\", outline = [[\"10 mm\", \"0 deg\"], [\"30 mm\", \"20 deg\"], [\"40 mm\", \"0 deg\"]] }\n[form.pattern]\nopening = [[\"10 mm\", \"60 deg\"], [\"30 mm\", \"90 deg\"], [\"10 mm\", \"120 deg\"]]\n[form.scan]\nfile = \"a.stl\"\nthin = \"0 mm\"\n");
        Assert.Empty(reading.Errors);
        LimbForm form = reading.Hand!.Form!, again = HandFile.Parse(HandWriter.Write(reading.Hand), "again.toml").Hand!.Form!;
        Assert.Equal(form.FarLine, again.FarLine);
        Assert.Equal(form.Patches[0].Outline, again.Patches[0].Outline);
        Assert.Equal(form.Pattern.Opening, again.Pattern.Opening);
        Assert.Equal("opening", again.Pattern.Thumb);
        Assert.Equal(0, again.Scan!.Thin);
        HandEditor editor = HandEditor.Open(reading)!;
        Assert.Contains("form.far_line[3][1]", editor.Paths());
        EditResult moved = editor.Set("form.far_line[3][1]", "55 mm");
        Assert.Equal(0.055, moved.Editor!.Reading.Hand!.Form!.FarLine[2].Place, 1e-12);
        Assert.Equal("form.far_line[3]", Assert.Single(editor.Set("form.far_line[3][1]", "95 mm").Errors).Key);
    }

    [Fact]
    public void Turns_area_and_crossings_are_those_of_the_drawing()
    {
        Assert.Equal(1, Line((0, 0), (0, 120), (0, 240)).Turns);
        Assert.Equal(-1, Line((0, 240), (0, 120), (0, 0)).Turns);
        LimbLine square = Line((0, 350), (20, 350), (20, 10), (0, 10));
        Assert.Equal((0, 0.02 * Degrees(20)), (square.Turns, square.Area), (a, b) => a.Item1 == b.Item1 && Math.Abs(a.Item2 - b.Item2) < 1e-12);
        Assert.Null(square.OwnCrossing());
        // an outline that laps over itself behind the limb
        Assert.NotNull(Line((0, 0), (0, 150), (0, 300), (0, 380), (5, 380), (5, 300), (5, 150), (5, 0)).OwnCrossing());
        // the same pen stroke seen a turn away
        Assert.Equal((0, 0), Line((0, 0), (0, 120), (0, 240)).Crossing(Line((-5, 355), (5, 360 + 90), (-1, 240))) is { } c ? (c.A, c.B) : default);
    }
}

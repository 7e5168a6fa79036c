using CsCheck;

namespace Graspwright.Hand.Tests;

public sealed class EditorTests
{
    [Theory]
    [InlineData("crank.fulcrum.x", "22 mm", 0.022, true)]
    [InlineData("crank.fulcrum[2]", "21 mm", 0.021, true)]
    [InlineData("objects.mug.diameter", "62 mm", 0.062, true)]
    [InlineData("fingers.index.length", "86 mm", 0.086, true)]
    [InlineData("fingers.little.arm", "10 mm", 0.010, true)]
    [InlineData("wrist.travel", "36 deg", 0.6283185307179586, true)]
    [InlineData("wrist.all_day_share", "0.18", 0.18, false)]
    [InlineData("wrist.capacity.flexion[3][2]", "12.2 N·m", 12.2, false)]
    [InlineData("fingers.ring.pad_stiffness", "12 N/mm", 12000.0, false)]
    public void Reads_text_and_SI(string path, string text, double si, bool inFile)
    {
        HandValue? value = Starting().Find(path);
        Assert.NotNull(value);
        Assert.Equal((text, inFile), (value.Text, value.InFile));
        Assert.Equal(si, value.Si!.Value, 1e-15 * Math.Abs(si));
    }

    [Fact]
    public void Counts_segments_from_one()
    {
        HandModel hand = Starting().Reading.Hand!;
        Assert.Equal(hand.Fingers[0].Segments.First, Starting().Find("fingers.index.segments[1]")!.Si);
        Assert.Equal(hand.Fingers[0].Segments.Third, Starting().Find("fingers.index.segments[3]")!.Si);
        Assert.Null(Starting().Find("fingers.index.segments[0]"));
        Assert.Null(Starting().Find("fingers.index.segments[4]"));
    }

    [Theory]
    [InlineData("crank.fulcrum.x", "25.5 mm", "fulcrum = [\"22 mm\",", "fulcrum = [\"25.5 mm\",")]
    [InlineData("wrist.travel", "0.6rad", "travel = \"36 deg\"", "travel = \"0.6rad\"")]
    [InlineData("wrist.drive", "extension", "drive = \"flexion\"          #", "drive = \"extension\"          #")]
    [InlineData("pull_link.anchor", "[\"-50 mm\", \"1 in\"]", "[\"-48 mm\", \"27 mm\"]", "[\"-50 mm\", \"1 in\"]")]
    [InlineData("objects.mug.diameter", "70 mm", "diameter = \"62 mm\"", "diameter = \"70 mm\"")]
    [InlineData("locks.two_held.ring.may_carry", "80 N", "ring = { pull = \"holds pull\" }", "ring = { pull = \"holds pull\", may_carry = \"80 N\" }")]
    [InlineData("rail.drag", "1 N", "travel = \"24 mm\"\n", "travel = \"24 mm\"\ndrag = \"1 N\"\n")]
    [InlineData("fingers.index.arm", "11 mm", "length = \"86 mm\"\n", "length = \"86 mm\"\narm = \"11 mm\"\n")]
    [InlineData("fingers.all.play", "0.1 mm", "arm = \"10 mm\"\n", "arm = \"10 mm\"\nplay = \"0.1 mm\"\n")]
    [InlineData("wrist.all_day_share", "0.2", "travel = \"36 deg\"\n", "travel = \"36 deg\"\nall_day_share = 0.2\n")]
    [InlineData("description", "for the yard", "name = \"first hand\"\n", "name = \"first hand\"\ndescription = \"for the yard\"\n")]
    [InlineData("fingers.index.half_thickness[2]", "7 mm", "length = \"86 mm\"\n", "length = \"86 mm\"\nhalf_thickness = [\"8.5 mm\", \"7 mm\", \"6.5 mm\"]\n")]
    public void Changes_that_value_and_no_other_byte(string path, string value, string from, string to)
    {
        foreach (string lineEnd in new[] { "\n", "\r\n" })
        {
            string text = Starter.Text.ReplaceLineEndings(lineEnd);
            string start = from.ReplaceLineEndings(lineEnd);
            int at = text.IndexOf(start, StringComparison.Ordinal);
            EditResult result = Open(text).Set(path, value);
            Assert.Empty(result.Errors);
            Assert.Equal(text[..at] + to.ReplaceLineEndings(lineEnd) + text[(at + start.Length)..], result.Editor!.Source.Text.Text);
            Assert.NotNull(result.Editor.Reading.Hand);
        }
    }

    [Theory]
    [InlineData("friction.pin", "0.1", "\n[friction]\npin = 0.1\n")]
    [InlineData("crank.fulcrum_pin.radius", "3 mm", "\n[crank.fulcrum_pin]\nradius = \"3 mm\"\n")]
    [InlineData("tolerances.\"crank.fulcrum.x\"", "0.2 mm", "\n[tolerances]\n\"crank.fulcrum.x\" = \"0.2 mm\"\n")]
    public void Adds_a_section_at_the_end(string path, string value, string added)
    {
        EditResult result = Starting().Set(path, value);
        Assert.Empty(result.Errors);
        Assert.Equal(Starter.Text + added, result.Editor!.Source.Text.Text);
    }

    [Fact]
    public void Sets_one_of_three_that_shared_a_value()
    {
        HandEditor editor = Starting().Set("fingers.index.play", "0.1 mm").Editor!.Set("fingers.index.play[3]", "0.2 mm").Editor!;
        Assert.Contains("play = [\"0.1 mm\", \"0.1 mm\", \"0.2 mm\"]", editor.Source.Text.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Adds_to_dotted_keys_where_no_header_may_stand()
    {
        string text = Starter.Text.Replace("[rail]", "slot.direction = \"-110 deg\"\nslot.length = \"7 mm\"\nslot.preload = \"45 N\"\nslot.rate = \"3 N/mm\"\n[rail]", StringComparison.Ordinal);
        EditResult result = Open(text).Set("crank.fulcrum_pin.radius", "3 mm");
        Assert.NotNull(result.Editor);
        EditResult again = Open(text.Replace("slot.length", "fulcrum_pin.play = \"0.1 mm\"\nslot.length", StringComparison.Ordinal)).Set("crank.fulcrum_pin.radius", "3 mm");
        Assert.Empty(again.Errors);
        Assert.Contains("slot.rate = \"3 N/mm\"\nfulcrum_pin.radius = \"3 mm\"\n[rail]", again.Editor!.Source.Text.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("crank.fulcrum.x", "25", "add the unit: write \"25 mm\"")]
    [InlineData("crank.fulcrum.x", "25,5 mm", "a comma is not a decimal point: write \"25.5 mm\"")]
    [InlineData("crank.fulcrum.x", "25 deg", "deg is an angle, a length is wanted here")]
    [InlineData("crank.fulcrm.x", "25 mm", "did you mean crank.fulcrum.x?")]
    [InlineData("objects.mugg.diameter", "25 mm", "add shape = \"cylinder\" to [objects.mugg]")]
    [InlineData("wrist.drive", "sideways", "write \"flexion\"")]
    [InlineData("wrist.travel", "-3 deg", "measure it again or check the sign and the unit, such as \"38 deg\"")]
    [InlineData("crank", "3 mm", "did you mean")]
    [InlineData("crank..x", "3 mm", "list the paths of this hand")]
    [InlineData("pull_link.slack", "3 mm", "write kind = \"cord\", or slack = \"0 mm\"")]
    [InlineData("description", "x\ny", "")]
    public void Refuses_what_does_not_fit(string path, string value, string fix)
    {
        EditResult result = Starting().Set(path, value);
        if (fix.Length == 0)
        {
            Assert.Equal(value, result.Editor!.Reading.Hand!.Description);
            return;
        }

        Assert.Null(result.Editor);
        Assert.Contains(result.Errors, e => e.Fix.Contains(fix, StringComparison.Ordinal));
    }

    [Fact]
    public void Replaces_a_part_and_keeps_the_rest()
    {
        string part = "[crank]\nfulcrum = [\"20 mm\", \"20 mm\"]\ninput = [\"4 mm\", \"17 mm\"]\noutput = [\"5 mm\", \"13 mm\"]\n[crank.slot]\ndirection = \"-110 deg\"\nlength = \"7 mm\"\npreload = \"45 N\"\nrate = \"3 N/mm\"\n";
        EditResult result = Starting().ReplacePart("crank", part);
        Assert.Empty(result.Errors);
        string old = "[crank]\nfulcrum = [\"22 mm\", \"21 mm\"]\ninput = [\"3 mm\", \"17 mm\"]\noutput = [\"5 mm\", \"13 mm\"]\n";
        Assert.Equal(Starter.Text.Replace(old, part, StringComparison.Ordinal), result.Editor!.Source.Text.Text);
        Assert.NotNull(result.Editor.Reading.Hand!.Crank.Slot);
        EditResult back = result.Editor.ReplacePart("crank", old);
        Assert.Equal(Starter.Text, back.Editor!.Source.Text.Text);
        Assert.NotEmpty(Starting().ReplacePart("crank", "[rail]\ntravel = \"1 mm\"\n").Errors);
    }

    [Fact]
    public void Takes_a_part_that_the_writer_wrote()
    {
        HandModel hand = Starting().Reading.Hand!;
        HandModel moved = hand with { Crank = hand.Crank with { Fulcrum = new(0.0251, 0.019), Slot = new(-1.9, 0.007, 45, 3000) } };
        EditResult result = Starting().ReplacePart("crank", HandWriter.WritePart(moved, "crank"));
        Assert.Empty(result.Errors);
        Assert.Equal(moved.Crank, result.Editor!.Reading.Hand!.Crank);
        Assert.Equal(hand.Rail, result.Editor.Reading.Hand.Rail);
        Assert.Contains("# thumb side first", result.Editor.Source.Text.Text, StringComparison.Ordinal);
    }

    /// <summary>No key is read and then forgotten: another value at any path gives another hand.</summary>
    [Fact]
    public void Makes_another_hand_of_another_value_at_every_path()
    {
        string full = HandWriter.Write(WithoutGuesses(Starting().Reading.Hand!))
            + "[crank.slot]\ndirection = \"-110 deg\"\nlength = \"7 mm\"\npreload = \"45 N\"\nrate = \"3 N/mm\"\n"
            + "[gimbal]\npin = { radius = \"3 mm\", play = \"0.1 mm\", worn_play = \"0.2 mm\" }\noffset = [\"1 mm\", \"2 mm\"]\n"
            + "[objects.tin]\nshape = \"cylinder\"\ndiameter = \"85 mm\"\ncentre = [\"70 mm\", \"-50 mm\"]\n"
            + "[objects.sheet]\nshape = \"plate\"\npoint = [\"120 mm\", \"-60 mm\"]\nnormal = \"90 deg\"\nthickness = \"3 mm\"\n"
            + "[fingers.index.pip_four_bar]\nbefore_arm = \"6 mm\"\nbefore_angle = \"-60 deg\"\nafter_arm = \"5 mm\"\nafter_angle = \"100 deg\"\n"
            + "[fingers.index.drive_pin]\nradius = \"11 mm\"\nangle = \"-60 deg\"\nline = \"170 deg\"\n"
            + "[tolerances]\n\"crank.fulcrum.x\" = \"0.2 mm\"\n";
        HandEditor editor = Open(full);
        string before = HandWriter.Write(editor.Reading.Hand!);
        string[] ignored = ["fingers.index.pip_ratio", .. editor.Paths().Where(SumsToOne)];
        Assert.All(editor.Paths().Where(p => editor.Find(p)!.Si is not null).Except(ignored), path =>
        {
            HandValue value = editor.Find(path)!;
            Assert.True(Quantity.TryParse(value.Text, value.Dimension!.Value, out Quantity? quantity, out _) || value.Text is "rigid" or "solid");
            double other = double.IsInfinity(value.Si!.Value) ? 7 : value.Si.Value == 0 ? -0.001 : value.Si.Value * 0.99;
            EditResult result = editor.Set(path, Quantity.Write(other, value.Dimension.Value));
            result = result.Editor is null ? editor.Set(path, Quantity.Write(Math.Abs(other), value.Dimension.Value)) : result;
            Assert.True(result.Editor is not null, path + string.Join('\n', result.Errors));
            Assert.NotEqual(before, HandWriter.Write(result.Editor.Reading.Hand!));
        });
    }

    [Theory]
    [InlineData("use.gentle", "64 %")]
    [InlineData("use.exposure.index", "10 %")]
    public void Refuses_to_change_one_of_some_shares_alone(string path, string value) =>
        Assert.Contains(Open(HandWriter.Write(WithoutGuesses(Starting().Reading.Hand!))).Set(path, value).Errors, e => e.Allowed == "shares that sum to 100 %");

    [Fact]
    public void Lists_only_paths_that_can_be_read()
    {
        HandEditor editor = Starting();
        Assert.All(editor.Paths(), path => Assert.True(editor.Find(path) is { Text.Length: > 0 } or { Path: "description" }, path));
        Assert.Contains("fingers.index.segments[1]", editor.Paths());
        Assert.Contains("balance.first.first_arm", editor.Paths());
    }

    [Fact]
    public void Sets_every_value_to_what_it_is_without_changing_the_hand()
    {
        HandEditor editor = Starting();
        string before = HandWriter.Write(editor.Reading.Hand! with { Guesses = [] });
        string[] paths = [.. editor.Paths().Where(p => editor.Find(p) is { Si: not null } && !p.StartsWith("balance", StringComparison.Ordinal) && !p.Contains("capacity", StringComparison.Ordinal) && !p.Contains(".segments", StringComparison.Ordinal) && !p.Contains(".arms", StringComparison.Ordinal))];
        Gen.Int[0, paths.Length - 1].Sample(
            i =>
            {
                EditResult result = editor.Set(paths[i], editor.Find(paths[i])!.Text);
                Assert.True(result.Errors.Count == 0, paths[i] + string.Join('\n', result.Errors));
                Assert.Equal(before, HandWriter.Write(result.Editor!.Reading.Hand! with { Guesses = [] }));
            },
            iter: 60);
    }

    [Fact]
    public void Stores_the_bytes_and_leaves_nothing_beside_them()
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory();
        try
        {
            string file = Path.Combine(folder.FullName, "hand.toml");
            File.WriteAllText(file, "old");
            Starting().Save(file);
            Assert.Equal(Starter.Text, File.ReadAllText(file));
            Assert.Single(folder.GetFileSystemInfos());
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static HandEditor Starting() => Open(Starter.Text);

    private static HandEditor Open(string text) => HandEditor.Open(HandFile.Parse(text, "hand.toml"))!;

    private static HandModel WithoutGuesses(HandModel hand) => hand with { Guesses = [], Structure = hand.Structure with { Guesses = [] } };

    private static bool SumsToOne(string path) => path is "use.gentle" or "use.firm" or "use.hard" || path.StartsWith("use.exposure.", StringComparison.Ordinal);
}

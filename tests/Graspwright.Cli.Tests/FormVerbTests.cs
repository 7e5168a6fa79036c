using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Graspwright.Cli.Tests;

/// <summary>The verbs of form and pattern as a maker types them.</summary>
public sealed class FormVerbTests
{
    [Theory]
    [InlineData("form", "Made from 6 tape marks")]
    [InlineData("pattern", "The liner is cut as ")]
    public void Answers_on_the_demo_with_a_sentence_first(string verb, string begins)
    {
        Started run = Started.Run(verb, Started.Demo);
        Assert.Equal(0, run.Code);
        Assert.StartsWith(begins, run.Answers, StringComparison.Ordinal);
        Assert.Contains("Cautions", run.Answers, StringComparison.Ordinal);
        using JsonDocument json = JsonDocument.Parse(Started.Run(verb, Started.Demo, "--json").Answers);
        Assert.Equal(verb, json.RootElement.GetProperty("verb").GetString());
        Assert.NotEmpty(json.RootElement.GetProperty("figures").EnumerateObject());
    }

    [Fact]
    public void Writes_its_files_and_compares_a_traced_outline()
    {
        using Folder folder = new();
        Assert.Equal(0, Started.Run("form", Started.Demo, "--svg", folder["a.svg"], "--stl", folder["a.stl"], "--csv", folder["a.csv"]).Code);
        Assert.Equal(0, Started.Run("pattern", Started.Demo, "--svg", folder["b.svg"], "--stretch", folder["c.svg"], "--dxf", folder["b.dxf"], "--pdf", folder["b.pdf"]).Code);
        Assert.Equal(["a.csv", "a.stl", "a.svg", "b.dxf", "b.pdf", "b.svg", "c.svg"], folder.Names);
        // the cut line of the drawing itself, put beside the pattern: off by the allowance along seams and nowhere by more than its mitre
        Started run = Started.Run("pattern", Started.Demo, "--compare", folder["b.dxf"]);
        Assert.Equal(0, run.Code);
        Assert.Contains("The traced outline lies", run.Answers, StringComparison.Ordinal);
    }

    [Fact]
    public void Wires_are_told_and_lie_on_a_layer_of_their_own()
    {
        using Folder folder = new();
        Started form = Started.Run("form", Started.Demo, "--svg", folder["a.svg"]);
        Assert.Contains("The wire back lead goes ", form.Answers, StringComparison.Ordinal);
        Assert.Contains("Wires lie on the outside of the sheet", form.Answers, StringComparison.Ordinal);
        Assert.Contains("palm lead", File.ReadAllText(folder["a.svg"]), StringComparison.Ordinal);
        Assert.Equal(0, Started.Run("pattern", Started.Demo, "--dxf", folder["a.dxf"]).Code);
        Assert.Contains("WIRES", File.ReadAllText(folder["a.dxf"]), StringComparison.Ordinal);
    }

    [Fact]
    public void An_independent_reader_finds_the_pieces_at_full_size()
    {
        const string python = "/usr/bin/python3";
        const string script = """
            import sys
            try:
                import ezdxf
            except ImportError:
                print("absent"); sys.exit(0)
            doc = ezdxf.readfile(sys.argv[1])
            print("errors", len(doc.audit().errors))
            for e in doc.modelspace():
                if e.dxftype() == "POLYLINE" and e.dxf.layer == "CUT":
                    p = [v.dxf.location for v in e.vertices]
                    print("cut", e.is_closed, round(max(q.x for q in p) - min(q.x for q in p), 2), round(max(q.y for q in p) - min(q.y for q in p), 2))
            ruler = [x for e in doc.modelspace() if e.dxftype() == "LINE" and e.dxf.layer == "RULER" for x in (e.dxf.start.x, e.dxf.end.x)]
            print("ruler", round(max(ruler) - min(ruler), 6))
            """;
        Assert.SkipUnless(File.Exists(python), "No system Python here; the independent reader ezdxf needs it.");
        using Folder folder = new();
        Assert.Equal(0, Started.Run("pattern", Started.Demo, "--dxf", folder["a.dxf"]).Code);
        using Process process = Process.Start(new ProcessStartInfo(python, ["-c", script, folder["a.dxf"]]) { RedirectStandardOutput = true, UseShellExecute = false })!;
        string[] said = process.StandardOutput.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries);
        process.WaitForExit();
        Assert.SkipWhen(said is ["absent"], "The independent reader ezdxf (package python3-ezdxf) is not installed.");
        using JsonDocument json = JsonDocument.Parse(Started.Run("pattern", Started.Demo, "--json").Answers);
        JsonElement table = json.RootElement.GetProperty("tables").GetProperty("pieces");
        Assert.Equal("errors 0", said[0]);
        Assert.Equal("ruler 100.0", said[^1]);
        string[] sizes = [.. table.GetProperty("rows").EnumerateArray().Select(r => string.Create(CultureInfo.InvariantCulture, $"cut True {r[1].GetDouble():0.00} {r[2].GetDouble():0.00}"))];
        Assert.Equal(sizes.Select(Rounded), said[1..^1].Select(Rounded));

        static string Rounded(string line) => string.Join(' ', line.Split(' ').Select(w => double.TryParse(w, NumberStyles.Float, CultureInfo.InvariantCulture, out double v) ? Math.Round(v, 1).ToString(CultureInfo.InvariantCulture) : w));
    }

    [Theory]
    [InlineData("A4")]
    [InlineData("letter")]
    public void The_printed_ruler_measures_100_mm_on_the_raster_of_another_program(string paper)
    {
        const string painter = "/usr/bin/pdftoppm";
        Assert.SkipUnless(File.Exists(painter), "pdftoppm is not here; it is in the system package poppler-utils.");
        using Folder folder = new();
        Assert.Equal(0, Started.Run("pattern", Started.Demo, "--paper", paper, "--pdf", folder["a.pdf"]).Code);
        using Process process = Process.Start(new ProcessStartInfo(painter, ["-gray", "-r", "508", "-f", "3", "-l", "3", "-singlefile", folder["a.pdf"], folder["a"]]) { UseShellExecute = false })!;
        process.WaitForExit();
        byte[] image = File.ReadAllBytes(folder["a.pgm"]);
        int[] head = [.. Encoding.ASCII.GetString(image, 0, 30).Split((char[])['\n', ' ']).Skip(1).Take(2).Select(w => int.Parse(w, CultureInfo.InvariantCulture))];
        (int width, int height) = (head[0], head[1]);
        // 20 dots to the millimetre; 9.7 mm above the foot the row crosses only the ticks of the ruler
        int row = height - 1 - (int)Math.Round(9.7 * 20), start = image.Length - width * height + row * width;
        int[] dark = [.. Enumerable.Range(60 * 20, width - 60 * 20).Where(x => image[start + x] < 128)];
        Assert.Equal(100.0, (dark[^1] - dark[0]) / 20.0, 0.25); // with one stroke's width
        int First(int from, int step) => dark.SkipWhile(_ => false).Count(x => step > 0 ? x < from + 12 && x >= from : x > from - 12 && x <= from);
        double middles = dark[^1] - First(dark[^1], -1) / 2.0 - (dark[0] + First(dark[0], 1) / 2.0) + 1;
        Assert.Equal(100.0, middles / 20.0, 0.1);
    }

    [Theory]
    [InlineData("stl", "solid x", "the end of the file in the header")]
    [InlineData("stl", "", "an empty file")]
    [InlineData("obj", "v 0 0 0\nv 1 0 0\nv 0 nan 0\nf 1 2 3\n", "line 3")]
    [InlineData("ply", "not a ply\n", "no 'ply'")]
    [InlineData("glb", "not a glb at all, by far", "no glTF header")]
    [InlineData("obj", "v 0 0 0\nv 12 0 0\nv 0 12 0\nv 0 0 12\nf 1 3 2\nf 1 2 4\nf 1 4 3\nf 2 3 4\n", "more than one unit")]
    [InlineData("obj", "v 0 0 0\nv 9000 0 0\nv 0 9000 0\nv 0 0 9000\nf 1 3 2\nf 1 2 4\nf 1 4 3\nf 2 3 4\n", "no limb in any unit")]
    [InlineData("obj", "v 0 0 0\nv 300 0 0\nv 0 300 0\nv 0 0 300\nf 1 3 2\nf 1 2 4\nf 1 4 3\nf 2 3 4\n", "a plane that misses the scan")]
    [InlineData("xyz", "1 2 3", ".stl, .obj, .ply or .glb")]
    public void Explains_a_bad_scan(string ending, string content, string words)
    {
        using Folder folder = new();
        string hand = folder.Changed("[liner]\n", $"[form.scan]\nfile = \"limb.{ending}\"\n\n[liner]\n");
        File.WriteAllText(folder[$"limb.{ending}"], content, Encoding.UTF8.GetPreamble().Length > 0 ? new UTF8Encoding(false) : Encoding.UTF8);
        Started run = Started.Run("form", hand);
        Assert.Equal(2, run.Code);
        Assert.Contains(words, run.Talk, StringComparison.Ordinal);
    }

    [Fact]
    public void Explains_a_missing_scan_and_girths_that_no_curve_has()
    {
        using Folder folder = new();
        Started missing = Started.Run("form", folder.Changed("[liner]\n", "[form.scan]\nfile = \"limb.stl\"\n\n[liner]\n"));
        Assert.Equal(2, missing.Code);
        Assert.Contains("no file limb.stl", missing.Talk, StringComparison.Ordinal);
        using Folder other = new();
        Started girth = Started.Run("form", other.Changed("girth = \"172 mm\"", "girth = \"272 mm\""));
        Assert.Equal(2, girth.Code);
        Assert.Contains("no rounded shape", girth.Talk, StringComparison.Ordinal);
    }

    // Line and column of the key, also for what only the form itself can tell.
    [Theory]
    [InlineData("far_line = [[\"82 mm\", \"0 deg\"], [\"84 mm\", \"90 deg\"]", "far_line = [[\"82 mm\", \"0 deg\"], [\"30 mm\", \"90 deg\"]", "form.far_line: a line through the root of the thumb, which gets a sleeve")]
    [InlineData("far_line = [[\"82 mm\", \"0 deg\"], [\"84 mm\", \"90 deg\"]", "far_line = [[\"82 mm\", \"0 deg\"], [\"180 mm\", \"90 deg\"]", "form.far_line[2]: a corner at 180 mm, beyond the marks")]
    [InlineData("[\"80 mm\", \"238 deg\"]", "[\"49 mm\", \"200 deg\"]", "form.patches.scar.outline[")]
    public void A_line_that_cannot_be_cut_is_told_with_its_place_in_the_file(string old, string changed, string said)
    {
        using Folder folder = new();
        string text = File.ReadAllText(Started.Demo), wrong = text.Replace(old, changed, StringComparison.Ordinal);
        Assert.NotEqual(text, wrong);
        File.WriteAllText(folder["hand.toml"], wrong);
        foreach (string verb in (string[])["form", "pattern"])
        {
            Started run = Started.Run(verb, folder["hand.toml"]);
            Assert.Equal(2, run.Code);
            Assert.Contains(said, run.Talk, StringComparison.Ordinal);
            Assert.Matches(@"hand\.toml[:(]\d{2,}[:,]\d+", run.Talk);
            Assert.Equal(["hand.toml"], folder.Names);
        }
    }
}

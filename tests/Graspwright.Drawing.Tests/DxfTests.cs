using System.Diagnostics;
using CsCheck;
using Graspwright.Drawing.Display;
using Graspwright.Drawing.Dxf;
using Graspwright.Drawing.Points;

namespace Graspwright.Drawing.Tests;

public sealed class DxfTests
{
    private static string Drawing(string entities, string header = "") =>
        ((header.Length == 0 ? "" : $"0|SECTION|2|HEADER|{header}|0|ENDSEC|") + $"0|SECTION|2|ENTITIES|{entities}|0|ENDSEC|0|EOF|").Replace('|', '\n');

    [Fact]
    public void Reads_back_what_it_writes()
    {
        DxfDrawing drawing = DxfReader.Read(DxfWriter.Write(SvgWriterTests.Everything()), "all.dxf");
        Assert.Equal(new Place(100, 60), drawing.Entities.OfType<DxfPoint>().Single().At);
        Assert.Equal((new Place(70, 25), 5.0), drawing.Entities.OfType<DxfCircle>().Select(c => (c.Centre, c.RadiusMm)).Single());
        Assert.Equal(["θ < 5° & \"so on\"", "turned"], drawing.Entities.OfType<DxfText>().Select(t => t.Text));
        Assert.Equal(new Place(60, 50), drawing.Entities.OfType<DxfText>().First().At);
        Assert.Equal(new Place(110, 10), drawing.Entities.OfType<DxfLine>().First().To);
        Assert.Equal("LINES", drawing.Entities.OfType<DxfLine>().First().Layer);
        Assert.Equal(4, drawing.Entities.OfType<DxfPolyline>().Count());
        Assert.Equal(1, drawing.Skipped); // the arc
    }

    [Fact]
    public void An_independent_reader_finds_the_same_drawing()
    {
        const string python = "/usr/bin/python3";
        const string script = """
            import sys
            try:
                import ezdxf
            except ImportError:
                print("absent"); sys.exit(0)
            doc = ezdxf.readfile(sys.argv[1])
            errors = doc.audit().errors
            print(doc.dxfversion, len(errors), sorted(l.dxf.name for l in doc.layers if l.dxf.name not in ("0", "DEFPOINTS", "Defpoints")))
            for e in doc.modelspace():
                t = e.dxftype()
                if t == "CIRCLE": print(t, e.dxf.layer, round(e.dxf.center.x, 6), round(e.dxf.center.y, 6), e.dxf.radius)
                if t == "ARC": print(t, e.dxf.layer, round(e.dxf.start_angle, 6), round(e.dxf.end_angle, 6))
                if t == "TEXT": print(t, e.dxf.layer, e.dxf.height, e.plain_text())
                if t == "POINT": print(t, e.dxf.layer, e.dxf.location.x, e.dxf.location.y)
                if t == "POLYLINE": print(t, e.dxf.layer, len(e.vertices), e.is_closed)
            """;
        Assert.SkipUnless(File.Exists(python), "No system Python here; the independent reader ezdxf needs it.");
        string file = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName() + ".dxf");
        try
        {
            File.WriteAllText(file, DxfWriter.Write(SvgWriterTests.Everything("30° ± 2.66 N·m − 1")));
            string said = Run(python, ["-X", "utf8", "-c", script, file]);
            Assert.SkipWhen(said.StartsWith("absent", StringComparison.Ordinal), "The independent reader ezdxf (package python3-ezdxf) is not installed.");
            string[] lines = said.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
            Assert.Equal("AC1009 0 ['LINES', 'ROUND', 'WORDS']", lines[0]);
            Assert.Contains("CIRCLE ROUND 70.0 25.0 5.0", lines);
            Assert.Contains("ARC ROUND 0.0 90.0", lines);
            Assert.Contains("TEXT WORDS 3.5 30° ± 2.66 N.m - 1", lines);
            Assert.Contains("POINT WORDS 100.0 60.0", lines);
            Assert.Contains("POLYLINE LINES 3 True", lines);
            Assert.Contains("POLYLINE LINES 3 False", lines);
        }
        finally
        {
            File.Delete(file);
        }
    }

    [Theory]
    [InlineData("R12")]
    [InlineData("R2000")]
    [InlineData("R2018")]
    public void Reads_points_that_an_independent_writer_wrote(string release)
    {
        const string python = "/usr/bin/python3";
        const string script = """
            import sys
            try:
                import ezdxf
            except ImportError:
                print("absent"); sys.exit(0)
            doc = ezdxf.new(sys.argv[2])
            if sys.argv[2] != "R12":
                doc.header["$INSUNITS"] = 5
            m = doc.modelspace()
            m.add_point((2, 3))
            m.add_text("crank.fulcrum", dxfattribs={"height": 0.25, "insert": (2.1, 3.1)})
            m.add_circle((-4.5, 2.8), 0.2)
            t = m.add_text("pull_link.anchor", dxfattribs={"height": 0.25})
            t.dxf.halign = 2; t.dxf.align_point = (-4.6, 2.9); t.dxf.insert = (-9, 2.9)
            m.add_circle((9.5, 0), 0.2)
            if sys.argv[2] == "R12":
                m.add_text("index.mcp", dxfattribs={"height": 0.25, "insert": (9.6, 0.1)})
            else:
                m.add_mtext("{\\fArial;index}.mcp", dxfattribs={"char_height": 0.25, "insert": (9.6, 0.1)})
            m.add_line((0, 0), (1, 1))
            doc.saveas(sys.argv[1])
            """;
        Assert.SkipUnless(File.Exists(python), "No system Python here; the independent writer ezdxf needs it.");
        string file = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName() + ".dxf");
        try
        {
            string said = Run(python, ["-X", "utf8", "-c", script, file, release]);
            Assert.SkipWhen(said.StartsWith("absent", StringComparison.Ordinal), "The independent writer ezdxf (package python3-ezdxf) is not installed.");
            double scale = release == "R12" ? 1 : 10;
            PointReading reading = PointDrawing.Read(File.ReadAllText(file), "points.dxf");
            Assert.Equal([("crank.fulcrum", 2 * scale, 3 * scale), ("pull_link.anchor", -4.5 * scale, 2.8 * scale), ("index.mcp", 9.5 * scale, 0)],
                reading.Points.Select(p => (p.Name, Math.Round(p.XMm, 9), Math.Round(p.YMm, 9))));
        }
        finally
        {
            File.Delete(file);
        }
    }

    private static string Run(string program, string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { UseShellExecute = false, StandardOutputEncoding = System.Text.Encoding.UTF8, RedirectStandardOutput = true, RedirectStandardError = true })!;
        Task<string> output = process.StandardOutput.ReadToEndAsync(), errors = process.StandardError.ReadToEndAsync();
        if (!process.WaitForExit(TimeSpan.FromSeconds(60)))
        {
            process.Kill(entireProcessTree: true);
            Assert.Fail(program + " took more than a minute.");
        }

        Assert.True(process.ExitCode == 0, errors.Result);
        return output.Result;
    }

    [Fact]
    public void Brings_inches_to_millimetres()
    {
        DxfDrawing drawing = DxfReader.Read(Drawing("0|POINT|10|1|20|2", "9|$INSUNITS|70|1"), "a.dxf");
        Assert.Equal(new Place(25.4, 50.8), drawing.Entities.OfType<DxfPoint>().Single().At);
        Assert.Equal("inches", drawing.Unit);
    }

    [Fact]
    public void Takes_the_formatting_off_paragraph_text()
    {
        DxfDrawing drawing = DxfReader.Read(Drawing(@"0|MTEXT|10|1|20|2|40|2.5|3|{\fArial;crank\P|1|ful}crum \U+03B8 %%d \\"), "a.dxf");
        Assert.Equal(@"crank fulcrum θ ° \", drawing.Entities.OfType<DxfText>().Single().Text);
    }

    [Fact]
    public void Mirrors_a_circle_seen_from_behind()
    {
        DxfDrawing drawing = DxfReader.Read(Drawing("0|CIRCLE|10|3|20|2|40|1|210|0|220|0|230|-1"), "a.dxf");
        Assert.Equal(new Place(-3, 2), drawing.Entities.OfType<DxfCircle>().Single().Centre);
    }

    [Theory]
    [InlineData("0|POINT|10|1,5|20|2", 8, "1,5")]
    [InlineData("0|POINT|10|nan|20|2", 8, "nan")]
    [InlineData("0|POINT|10|1e9|20|2", 8, "1e9")]
    [InlineData("0|CIRCLE|10|1|20|2|40|0", 12, "0")]
    [InlineData("0|POINT|10|1", 6, "group code 20")]
    [InlineData("0|POINT|ten|1", 7, "ten")]
    public void Names_line_and_value_of_what_is_wrong(string entities, int line, string found)
    {
        FileFault fault = Assert.Single(Assert.Throws<DrawingFileException>(() => DxfReader.Read(Drawing(entities), "a.dxf")).Faults);
        Assert.Equal(("a.dxf", line), (fault.File, fault.Line));
        Assert.Contains(found, fault.Found, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("hello")]
    [InlineData("AutoCAD Binary DXF\r\n\u001a\0")]
    [InlineData("0\nSECTION\n2\nENTITIES\n0\nPOINT\n10\n1\n20\n1")]
    [InlineData("0\nSECTION\n2\nENTITIES\n0\n")]
    public void Refuses_what_is_not_a_whole_drawing(string text) => Assert.Throws<DrawingFileException>(() => DxfReader.Read(text, "a.dxf"));

    [Fact]
    public void Garbage_is_refused_or_read_but_never_breaks_the_reader()
    {
        string whole = DxfWriter.Write(SvgWriterTests.Everything());
        Gen.Select(Gen.Int[0, whole.Length - 1], Gen.Int[0, 40], Gen.String[0, 12]).Sample((at, cut, put) =>
        {
            string broken = whole[..at] + put + whole[Math.Min(whole.Length, at + cut)..];
            return ReadsOrRefuses(broken);
        });
        Gen.String.Sample(ReadsOrRefuses);
    }

    private static bool ReadsOrRefuses(string text)
    {
        try
        {
            return DxfReader.Read(text, "a.dxf").Entities.OfType<DxfPoint>().All(p => Math.Abs(p.At.X) <= DxfReader.FarthestMm);
        }
        catch (DrawingFileException e)
        {
            return e.Faults.Count > 0;
        }
    }
}

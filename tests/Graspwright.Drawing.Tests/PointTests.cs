using CsCheck;
using Graspwright.Drawing.Display;
using Graspwright.Drawing.Dxf;
using Graspwright.Drawing.Points;

namespace Graspwright.Drawing.Tests;

public sealed class PointTests
{
    private static readonly NamedPoint[] Hand = [new("crank.fulcrum", 20, 20), new("pull_link.anchor", -45, 28.125), new("index.mcp", 95, 0), new("ring.mcp", 95, 0)];

    private static readonly Gen<NamedPoint[]> AnyPoints = Gen.Select(Gen.Double[-300, 300], Gen.Double[-300, 300]).Array[0, 12]
        .Select(a => a.Select((p, i) => new NamedPoint($"fingers.f{i} [{i}]_a-b", Math.Round(p.Item1, 2), Math.Round(p.Item2, 2))).ToArray());

    private static IReadOnlyList<FileFault> TableFaults(string text) => Assert.Throws<DrawingFileException>(() => PointTable.Read(text, "points.csv")).Faults;

    [Fact]
    public void A_table_reads_back_exactly() =>
        Gen.Select(Gen.Double[-10_000, 10_000], Gen.Double[-10_000, 10_000]).Array[0, 20].Sample(a =>
        {
            NamedPoint[] points = [.. a.Select((p, i) => new NamedPoint($"p{i}", p.Item1, p.Item2))];
            Assert.Equal(points, PointTable.Read(PointTable.Write(points), "points.csv"));
        });

    [Fact]
    public void A_drawing_reads_back_the_same_points() => AnyPoints.Sample(points =>
        Assert.Equal(points.OrderBy(p => p.Name, StringComparer.Ordinal), PointDrawing.Read(PointDrawing.Write(points), "points.dxf").Points.OrderBy(p => p.Name, StringComparer.Ordinal)));

    [Fact]
    public void Two_knuckles_behind_one_another_keep_both_names() =>
        Assert.Equal(Hand, PointDrawing.Read(PointDrawing.Write(Hand), "points.dxf").Points);

    [Fact]
    public void Writes_a_table_with_a_header_and_full_coordinates() =>
        Assert.StartsWith("name,x_mm,y_mm\ncrank.fulcrum,20,20\npull_link.anchor,-45,28.125\n", PointTable.Write(Hand), StringComparison.Ordinal);

    [Theory]
    [InlineData("name,x_mm,y_mm\ncrank,12,5,3\n", 2, 1, "row", "4 cells")]
    [InlineData("name,x_mm,y_mm\ncrank,12 mm,5\n", 2, 7, "x_mm", "'12 mm'")]
    [InlineData("name,x_mm,y_mm\ncrank,12,\n", 2, 10, "y_mm", "''")]
    [InlineData("name,x_mm,y_mm\ncrank,1e300,5\n", 2, 7, "x_mm", "'1e300'")]
    [InlineData("name,x_mm,y_mm\ncrank,NaN,5\n", 2, 7, "x_mm", "'NaN'")]
    [InlineData("name,x_mm,y_mm\n\"crank\",1,5\n", 2, 1, "name", "'\"crank\"'")]
    [InlineData("name,x_mm,y_mm\ncrank,1,5\ncrank,2,5\n", 3, 1, "name", "'crank'")]
    [InlineData("name;x_mm;y_mm\ncrank;12,5;3\n", 1, 1, "header", "'name;x_mm;y_mm'")]
    [InlineData("", 1, 1, "header", "an empty file")]
    public void A_table_fault_names_line_column_and_value(string text, int line, int column, string key, string found)
    {
        FileFault fault = Assert.Single(TableFaults(text));
        Assert.Equal((line, column, key, found), (fault.Line, fault.Column, fault.Key, fault.Found));
        Assert.NotEmpty(fault.Fix);
    }

    [Fact]
    public void A_decimal_comma_is_refused_with_the_fix_and_all_faults_come_at_once()
    {
        IReadOnlyList<FileFault> faults = TableFaults("name,x_mm,y_mm\na,12,5,3\nb,x,y\n");
        Assert.Equal([2, 3, 3], faults.Select(f => f.Line));
        Assert.Contains("point, not a comma", faults[0].Fix, StringComparison.Ordinal);
    }

    [Fact]
    public void Takes_a_byte_order_mark_other_line_ends_and_empty_lines() =>
        Assert.Equal([new NamedPoint("a", 1, 2)], PointTable.Read("\uFEFFname,x_mm,y_mm\r\n\r\n a , 1 ,2\r\n\r\n", "p.csv"));

    [Fact]
    public void Names_circles_by_the_label_near_them_and_lists_what_is_left_over()
    {
        var picture = new Picture(200, 200, "t", "d");
        picture.Circle(new(10, 10), 3, Pen.Thin);
        picture.Circle(new(10, 10), 1, Pen.Thin);
        picture.Text(new(12, 13), "crank.fulcrum", 2.5);
        picture.Circle(new(60, 60), 3, Pen.Thin);
        picture.Text(new(150, 150), "Drawn in the boatyard.", 2.5);
        PointReading reading = PointDrawing.Read(DxfWriter.Write(picture), "p.dxf");
        Assert.Equal([new NamedPoint("crank.fulcrum", 10, 10)], reading.Points);
        Assert.Equal([new Place(60, 60)], reading.Unlabelled);
        Assert.Equal(["Drawn in the boatyard."], reading.UnusedTexts);
    }

    [Theory]
    [InlineData(13, 10, "mid", "as near to the point")]
    [InlineData(10.5, 10, "one 2:1", "'one 2:1'")]
    public void An_unclear_label_is_an_error(double x, double y, string label, string found)
    {
        var picture = new Picture(200, 200, "t", "d");
        picture.Point(new(10, 10));
        picture.Point(new(16, 10));
        picture.Text(new(x, y), label, 2.5);
        FileFault fault = Assert.Single(Assert.Throws<DrawingFileException>(() => PointDrawing.Read(DxfWriter.Write(picture), "p.dxf")).Faults);
        Assert.Contains(found, fault.Found, StringComparison.Ordinal);
        Assert.True(fault.Line > 0);
    }

    [Fact]
    public void Two_labels_at_one_point_are_an_error_naming_both()
    {
        var picture = new Picture(200, 200, "t", "d");
        picture.Point(new(10, 10));
        picture.Text(new(11, 10), "one", 2.5);
        picture.Text(new(10, 11), "two", 2.5);
        FileFault fault = Assert.Single(Assert.Throws<DrawingFileException>(() => PointDrawing.Read(DxfWriter.Write(picture), "p.dxf")).Faults);
        Assert.Matches("'one' on line [0-9]+ and 'two' on line [0-9]+", fault.Found);
    }

    [Theory]
    [InlineData("1bad")]
    [InlineData("a,b")]
    [InlineData("")]
    [InlineData("end ")]
    public void Will_not_write_a_name_it_could_not_read(string name)
    {
        Assert.Throws<ArgumentException>(() => PointTable.Write([new(name, 0, 0)]));
        Assert.Throws<ArgumentException>(() => PointDrawing.Write([new(name, 0, 0)]));
        Assert.Throws<ArgumentException>(() => PointTable.Write([new("a", double.NaN, 0)]));
    }

    [Fact]
    public void Garbage_tables_are_refused_or_read() => Gen.Select(Gen.String, Gen.Bool).Sample((s, headed) =>
    {
        try
        {
            return PointTable.Read((headed ? "name,x_mm,y_mm\n" : "") + s, "p.csv").All(p => NamedPoint.IsName(p.Name));
        }
        catch (DrawingFileException e)
        {
            return e.Faults.Count > 0;
        }
    });
}

using Graspwright.Drawing.Display;
using Graspwright.Numerics;
using Graspwright.Page.Pattern;

namespace Graspwright.Page.Tests.Pattern;

public sealed class LineJoiningTests
{
    [Fact]
    public void Pieces_in_any_order_and_direction_become_one_line()
    {
        (Vector3D, Vector3D)[] pieces = [(At(2, 0), At(3, 1)), (At(1, 0), At(0, 0)), (At(2, 0), At(1, 0))];
        IReadOnlyList<Vector3D> line = Assert.Single(LineJoining.Join(pieces, 1e-6, 1e-6));
        Assert.Equal(3, line.Count); // the point in the middle of the straight part is not needed
        Assert.Equal(new HashSet<Vector3D> { At(0, 0), At(3, 1) }, new HashSet<Vector3D> { line[0], line[^1] });
    }

    [Fact]
    public void A_round_line_closes_and_keeps_within_its_tolerance()
    {
        const int Sides = 720;
        const double Off = 0.01;
        Vector3D On(int i) => At(10 * Math.Cos(Math.Tau * (i % Sides) / Sides), 10 * Math.Sin(Math.Tau * (i % Sides) / Sides));
        IReadOnlyList<Vector3D> line = Assert.Single(LineJoining.Join([.. Enumerable.Range(0, Sides).Select(i => (On(i), On(i + 1)))], 1e-6, Off));
        Assert.Equal(line[0], line[^1]);
        Assert.InRange(line.Count, 12, Sides / 4);

        // Chord of a circle: the arc rises over it by r·(1 − cos(half the angle)).
        Assert.All(line.Zip(line.Skip(1)), l => Assert.InRange(10 - Math.Sqrt(100 - Math.Pow((l.Second - l.First).Length / 2, 2)), 0, Off + 1e-9));
    }

    [Fact]
    public void A_joined_picture_has_the_same_layers_and_other_marks_untouched()
    {
        Picture picture = new(50, 50, "title", "words");
        picture.OnLayer("a").Line(new(0, 0), new(10, 0), Pen.Thin);
        picture.Line(new(10, 0), new(20, 5), Pen.Thin);
        picture.Line(new(20, 5), new(30, 5), Pen.Main);
        picture.OnLayer("b").Circle(new(5, 5), 2, Pen.Thin);
        picture.OnLayer("c").Text(new(1, 1), "far", 3);
        Picture joined = JoinedPicture.Of(picture, "c");
        Assert.Equal(["a", "b"], joined.Layers);
        Assert.Equal(3, ((PolylineMark)joined.Marks[0]).Places.Count);
        Assert.Equal(Pen.Main, ((PolylineMark)joined.Marks[1]).Pen);
        Assert.Equal(picture.Marks[3], joined.Marks[2]);
    }

    private static Vector3D At(double x, double y) => new(x, y, 0);
}

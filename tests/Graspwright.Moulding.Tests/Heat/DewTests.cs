using Graspwright.Moulding.Heat;

namespace Graspwright.Moulding.Tests.Heat;

public sealed class DewTests
{
    // A psychrometric chart reads 9.3 °C at 20 °C and 50 %, 12.0 °C at 20 °C and 60 %, 13.9 °C at 25 °C and 50 % (from memory).
    [Theory]
    [InlineData(20, 0.5, 9.3)]
    [InlineData(20, 0.6, 12.0)]
    [InlineData(25, 0.5, 13.9)]
    public void Reads_as_the_chart_does(double air, double humidity, double dew) =>
        Assert.Equal(dew, Dew.Point(air + 273.15, humidity) - 273.15, 0.06);

    [Fact]
    public void Is_the_air_itself_where_the_air_is_full() => Assert.Equal(291, Dew.Point(291, 1), 1e-9);
}

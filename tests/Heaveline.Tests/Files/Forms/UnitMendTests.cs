using Heaveline.Files.Cars;
using Heaveline.Files.Forms;

namespace Heaveline.Tests.Files.Forms;

public class UnitMendTests
{
    [Theory]
    [InlineData("wheelbase", "2520 m", "2520 mm")]
    [InlineData("wheelbase", "2520 m ± 5 mm", "2520 mm ± 5 mm")]
    [InlineData("wheelbase", "2.52 mm ± 0.01", "2.52 m ± 0.01")]
    [InlineData("front/damper/damping-ratio", "28", "28 %")]
    [InlineData("front/spring/rate", "24500 N/mm", "24500 N/m")]
    [InlineData("front/spring/spring-per-wheel", "45", "0.9")]
    [InlineData("front/spring/moves", "0.9", "45 mm for 50 mm at the wheel")]
    [InlineData("front/spring/moves", "45", "45 mm for 50 mm at the wheel")]
    [InlineData("rear/damper/moves", "1 3/4 in", null)]
    [InlineData("rear/damper/moves", "1.75 in", "1.75 in for 50 mm at the wheel")]
    [InlineData("rear/damper/moves", "45 mm for 50 mm at the wheel", null)]
    [InlineData("wheelbase", "2.52 m", null)]
    [InlineData("wheelbase", "0 m", null)]
    [InlineData("wheelbase", "9e9 m", null)]
    [InlineData("wheelbase", "long", null)]
    public void A_number_that_no_vehicle_has_in_its_unit_is_asked_about_in_the_one_that_makes_it_a_usual_one(string path, string typed, string? meant)
    {
        var field = CarFile.Form.At(path.Split('/'))!;
        Assert.Equal(meant, UnitMend.Of(field, typed)?.Text);
        // What is mended is not asked about again.
        Assert.Null(meant is null ? null : UnitMend.Of(field, meant));
    }

    [Theory]
    [InlineData("front-moves", "0.9 mm", "45 mm")]
    [InlineData("front-moves", "45 mm", null)]
    [InlineData("front-moves", "4.5 mm", "4.5 cm")]
    [InlineData("front", "1700 kg", null)]
    public void The_sheet_of_a_new_car_asks_the_same(string key, string typed, string? meant) =>
        Assert.Equal(meant, GarageSheet.Lines.Single(line => line.Key == key).Mend(typed)?.Text);
}

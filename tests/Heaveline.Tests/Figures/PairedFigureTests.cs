using Heaveline.Figures;
using Heaveline.Quantities;

namespace Heaveline.Tests.Figures;

public class PairedFigureTests
{
    private static readonly PairedValue Roll = new("roll", "°", At(4.0), At(5.0), IsLessBetter: true);
    private static readonly PairedValue Travel = new("travel left", "mm", At(50.0), At(40.0), IsLessBetter: false);
    private static readonly PairedValue Stiffness = new("stiffness", "N/mm", At(50.0), At(50.1), IsLessBetter: null);

    [Fact]
    public void What_is_worse_with_the_second_is_marked_and_said_and_what_is_better_is_not()
    {
        var figure = PairedFigure.Of("Cost", "At rest.", "before", "after", [Roll, Travel, Stiffness]);
        Assert.Contains("Worse with after: roll; travel left.", figure.Caption, StringComparison.Ordinal);
        Assert.Equal(["▲ roll", "▲ travel left", "stiffness"], figure.Panels.Cast<CategoryPanel>().SelectMany(p => p.Categories).Select(c => c.Name));
        var back = PairedFigure.Of(
            "Cost", "At rest.", "before", "after", [Roll with { Before = Roll.After!, After = Roll.Before }, Stiffness with { IsLessBetter = true }]);
        Assert.Contains("No number with a better side is worse", back.Caption, StringComparison.Ordinal);
        Assert.DoesNotContain(back.Panels.Cast<CategoryPanel>().SelectMany(p => p.Categories), c => c.Name.StartsWith('▲'));
    }

    [Fact]
    public void Next_to_no_difference_is_not_blown_up_to_the_width_of_the_figure()
    {
        var axis = Assert.IsType<CategoryPanel>(Assert.Single(PairedFigure.Of("Cost", "", "before", "after", [Stiffness]).Panels)).Value;
        Assert.True(axis.To - axis.From >= 0.2 * 50.0);
        Assert.True(axis.From < 50.0 && axis.To > 50.1);
    }

    [Fact]
    public void One_car_alone_has_no_change_and_no_number_at_all_is_refused()
    {
        var alone = PairedFigure.Of("Where it stands", "At rest.", "car", null, [Roll with { After = null }]);
        Assert.Single(Assert.IsType<CategoryPanel>(Assert.Single(alone.Panels)).Categories[0].Values);
        Assert.DoesNotContain("worse", alone.Caption + alone.SignNote, StringComparison.OrdinalIgnoreCase);
        Assert.Throws<RefusedValueException>(() => PairedFigure.Of("Nothing", "", "before", "after", []));
    }

    private static CategoryValue At(double value) => new() { Value = value };
}

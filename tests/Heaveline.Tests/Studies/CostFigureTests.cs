using Heaveline.Cars;
using Heaveline.Figures;
using Heaveline.Studies;

namespace Heaveline.Tests.Studies;

public class CostFigureTests
{
    [Fact]
    public void Every_dot_of_the_figure_is_a_number_of_the_table_and_doubts_give_it_an_interval()
    {
        var doubtful = PlainCar.Saloon with { Wheelbase = PlainCar.Saloon.Wheelbase.WithDoubt(0.02) };
        var softer = doubtful with
        {
            Name = "softer",
            Rear = doubtful.Rear with { Spring = doubtful.Rear.Spring with { Law = new LinearSpring { Rate = new(15e3) } } },
        };
        var answer = CostStudy.Run(new CostAsked { Cars = [LoadedCar.Of(doubtful), LoadedCar.Of(softer)], Draws = 100, Seed = 1 });
        var rows = answer.Tables[0].Rows.Where(r => r.Values.All(v => v is { } x && double.IsFinite(x))).ToList();
        var dots = answer.Figure("cost").Panels.Cast<CategoryPanel>().SelectMany(p => p.Categories).ToDictionary(c => c.Name.TrimStart('▲', ' '));
        Assert.Equal(rows.Select(r => r.Label).Order(), dots.Keys.Order());
        Assert.All(
            rows, r => Assert.Equal(r.Values.Select(v => v!.Value), dots[r.Label].Values.Select(v => v.Value), (a, b) => Math.Abs(a - b) < 1e-9));
        Assert.Contains(dots.Values, c => c.Values.All(v => v.Low < v.High));
    }
}

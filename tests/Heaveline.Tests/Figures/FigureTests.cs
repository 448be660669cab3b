using Heaveline.Figures;
using Heaveline.Quantities;

namespace Heaveline.Tests.Figures;

public class FigureTests
{
    private static ChartPanel Chart => new() { Y = new Axis { Label = "pitch", Unit = "°" } };

    [Fact]
    public void An_axis_is_headed_by_its_label_with_the_unit_in_brackets()
    {
        Assert.Equal("pitch (°)", Chart.Y.Heading);
        Assert.Equal("ratio", new Axis { Label = "ratio" }.Heading);
    }

    [Fact]
    public void A_trace_with_columns_of_unequal_length_is_refused_whichever_comes_first()
    {
        var said = Assert.Throws<RefusedValueException>(() => new Trace { Xs = [0, 1, 2], Ys = [0, 1] }).Message;
        Assert.Contains("2 samples", said, StringComparison.Ordinal);
        Assert.Contains("3 samples", said, StringComparison.Ordinal);
        Assert.Throws<RefusedValueException>(() => new Trace { Ys = [0, 1], Xs = [0, 1, 2] });
    }

    [Fact]
    public void A_trace_takes_NaN_as_a_gap_but_no_infinity()
    {
        Assert.Equal(3, Trace.From("", [0, 1, 2], [0, double.NaN, 1]).Ys.Length);
        Assert.Contains(
            "sample 1",
            Assert.Throws<RefusedValueException>(() => Trace.From("", [0, 1], [0, double.PositiveInfinity])).Message,
            StringComparison.Ordinal);
        Assert.Throws<RefusedValueException>(() => Trace.From("", [0, double.NaN], [0, 1]));
    }

    [Fact]
    public void A_trace_keeps_its_own_copy_of_the_samples()
    {
        double[] ys = [1, 2];
        var trace = Trace.From("", [0, 1], ys);
        ys[0] = 99;
        Assert.Equal(1.0, trace.Ys[0]);
    }

    [Fact]
    public void A_band_or_an_axis_the_wrong_way_round_is_refused()
    {
        Assert.Throws<RefusedValueException>(() => new Band { From = 1, To = 0.5 });
        Assert.Throws<RefusedValueException>(() => new Axis { Label = "x", From = 2, To = 1 });
        Assert.Throws<RefusedValueException>(() => new Axis { Label = "x", To = 1 } with { From = 1 });
    }

    [Fact]
    public void A_ragged_table_is_refused_by_the_name_of_its_row()
    {
        var said = Assert.Throws<RefusedValueException>(() => new TablePanel
        {
            Columns = [new TableColumn { Heading = "a" }, new TableColumn { Heading = "b" }],
            Rows = [TableRow.Of("1", "2"), TableRow.Of("laden")],
        }).Message;
        Assert.Contains("laden", said, StringComparison.Ordinal);
    }

    [Fact]
    public void A_figure_without_panels_title_or_alternative_text_is_refused()
    {
        Assert.Throws<RefusedValueException>(() => new Figure { Title = "t", AltText = "a", Panels = [] });
        Assert.Throws<RefusedValueException>(() => new Figure { Title = " ", AltText = "a", Panels = [Chart] });
        Assert.Throws<RefusedValueException>(() => new Figure { Title = "t", AltText = "", Panels = [Chart] });
    }

    [Fact]
    public void A_chart_stands_on_its_own_x_axis_before_the_shared_one_and_on_none_it_is_refused()
    {
        var figure = new Figure { Title = "t", AltText = "a", Panels = [Chart] };
        Assert.Contains("pitch", Assert.Throws<RefusedValueException>(() => figure.XAxisOf(Chart)).Message, StringComparison.Ordinal);

        var shared = new Axis { Label = "time", Unit = "s" };
        var own = new Axis { Label = "speed", Unit = "km/h" };
        Assert.Same(shared, (figure with { SharedX = shared }).XAxisOf(Chart));
        Assert.Same(own, (figure with { SharedX = shared }).XAxisOf(Chart with { X = own }));
    }

    [Fact]
    public void A_scene_needs_a_box_with_width_and_height()
    {
        Shape[] something = [LineShape.Between(new(0, 0), new(1, 1))];
        Assert.Throws<RefusedValueException>(() => new ScenePanel { XFrom = 0, XTo = 0, ZFrom = 0, ZTo = 1, Shapes = [.. something] });
        Assert.Throws<RefusedValueException>(() => new ScenePanel { XFrom = 0, XTo = 1, ZFrom = 0, ZTo = -1, Shapes = [.. something] });
        Assert.Throws<RefusedValueException>(() => new ScenePoint(double.NaN, 0));
    }
}

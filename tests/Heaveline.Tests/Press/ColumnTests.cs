using Heaveline.Cars;
using Heaveline.Causes;
using Heaveline.Figures;
using Heaveline.Files.Cars;
using Heaveline.Files.Roads;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Passes;
using Heaveline.Press.Paper;
using Heaveline.Press.Plates;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Press;

public class ColumnTests
{
    public static TheoryData<string> Kinds => ["pass", "compare", "loads", "modes", "why"];

    [Theory, MemberData(nameof(Kinds))]
    public void The_programs_figures_fit_one_column_too(string kind)
    {
        var car = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml")).Value!;
        var model = RideModel.Of(car);
        var hump = NamedRoads.All["village-hump"];
        var pass = Pass.Of(model, hump, 14.0);
        var measures = PassMeasures.Of(pass);
        var figure = kind switch
        {
            "pass" => PassFigure.Of(pass, measures),
            "compare" => CompareFigure.Of([("soft", pass, measures), ("stiff", pass, measures)]),
            "loads" => LoadStatesFigure.Of([.. car.LoadStates.Prepend(LoadState.Reference).Select(l => RideModel.Of(car, l))]),
            "modes" => ModesFigure.Of(model, BodyModes.Of(model)),
            _ => WhyFigure.Of(Why.Of(model, hump, 14.0)),
        };
        var setting = new FigureSetting(figure.InColumn());
        var sheet = new RecordedSheet();
        setting.Draw(sheet);
        // 84 mm in points of 1/72 in.
        Assert.Equal(84.0 / 25.4 * 72.0, setting.Width, 0.1);
        var page = new Box(0.0, 0.0, setting.Width, setting.Height);
        Assert.All(sheet.Texts, text => Assert.True(page.Holds(text.Room), $"'{text.Text}' leaves the sheet: {text.Room}"));
    }

    [Fact]
    public void A_turned_table_keeps_every_cell_with_its_unit()
    {
        var table = new TablePanel
        {
            Columns =
            [
                new TableColumn { Heading = "load" },
                new TableColumn { Heading = "mass", Unit = "kg" },
                new TableColumn { Heading = "ratio", Unit = "–" },
            ],
            Rows = [TableRow.Of("empty", "1360", "1.13"), TableRow.Of("laden", "1740", "0.97")],
        };
        var turned = table.Turned();
        Assert.Equal(["load", "empty", "laden"], turned.Columns.Select(c => c.Heading));
        Assert.Equal(["mass, kg", "1360", "1740"], turned.Rows[0].Cells);
        Assert.Equal(["ratio", "1.13", "0.97"], turned.Rows[1].Cells);
    }
}

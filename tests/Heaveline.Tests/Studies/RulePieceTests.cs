using Heaveline.Studies;

namespace Heaveline.Tests.Studies;

/// <summary>Pieces of the maps of a rule, as another machine gets them.</summary>
public class RulePieceTests
{
    private static RuleAsked Asked { get; } = new()
    {
        Car = LoadedCar.Of(PlainCar.Saloon with { LoadStates = [PlainCar.With(150.0, 2.0) with { Name = "two up" }] }),
        Road = KnownThings.Hump,
        Slowest = 10.0,
        Fastest = 20.0,
        Detail = new RuleDetail { Values = 4, Speeds = 6, First = (4, 2), LoadSpeeds = 3 },
    };

    [Theory]
    [InlineData(0, 4, 6, 2, 4)]
    [InlineData(0, 4, 2, 0, 2)]
    [InlineData(1, 25, 3, 0, 3)]
    public void The_coarse_map_the_whole_one_and_that_of_another_load_come_in_pieces(int load, int values, int speeds, int first, int count) =>
        // Each speed at every value, at the reference and as it is.
        Assert.Equal(count * (values + 2), RulePiece.Answer(Done(new RulePiece(load, values, speeds, 0, first, count))).Rows.Length);

    [Theory]
    [InlineData(-1, 4, 6, 0, 0, 4)]
    [InlineData(2, 25, 3, 0, 0, 3)]
    [InlineData(0, 5, 6, 0, 0, 4)]
    [InlineData(0, int.MaxValue, 6, 0, 0, 4)]
    [InlineData(0, 4, 100_000_000, 0, 0, 4)]
    [InlineData(0, 25, 3, 0, 0, 3)]
    [InlineData(1, 4, 6, 0, 0, 4)]
    [InlineData(0, 4, 6, 1, 0, 4)]
    [InlineData(0, 4, 6, -1, 0, 4)]
    [InlineData(0, 4, 6, 0, -1, 4)]
    [InlineData(0, 4, 6, 0, 3, 4)]
    [InlineData(0, 4, 6, 0, 0, 5)]
    [InlineData(0, 4, 6, 0, 0, 0)]
    [InlineData(0, 4, 6, 0, int.MaxValue, 4)]
    [InlineData(0, 4, 6, 0, 0, int.MinValue)]
    public void What_is_no_piece_of_the_question_is_refused(int load, int values, int speeds, int group, int first, int count) =>
        Assert.Throws<FormatException>(() => Done(new RulePiece(load, values, speeds, group, first, count)));

    [Fact]
    public void Who_stops_a_piece_while_its_cars_are_made_stops_it_for_nobody_else()
    {
        var pieces = RuleStudy.Pieces(Asked);
        var piece = new RulePiece(0, 4, 6, 0, 0, 1).ToBytes();
        Assert.ThrowsAny<OperationCanceledException>(() => pieces.Do(piece, new CancellationToken(canceled: true)));
        Assert.Equal(RuleStudy.Pieces(Asked).Do(piece, CancellationToken.None), pieces.Do(piece, CancellationToken.None));
    }

    private static byte[] Done(RulePiece piece) => RuleStudy.Pieces(Asked).Do(piece.ToBytes(), TestContext.Current.CancellationToken);
}

using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Parts;
using Heaveline.Search;
using Heaveline.Studies;

namespace Heaveline.Tests.Studies;

/// <summary>The drawn cars of a study: an error belongs to its name, whatever else is asked.</summary>
public class ChooseDrawTests
{
    private static readonly ChooseAsked Asked = VillageParts.Asked with { Loads = [VillageParts.Saloon.LoadStates[0]] };

    public static TheoryData<string> Additions => ["part", "load", "wish", "place", "limit"];

    [Theory]
    [MemberData(nameof(Additions))]
    public void Adding_anything_to_a_study_moves_no_draw_of_what_was_there(string added)
    {
        var more = added switch
        {
            "part" => Asked with
            {
                Lists =
                [
                    VillageParts.List with
                    {
                        Parts = [VillageParts.Spring("Aspen F-18", 18e3, AxleEnd.Front, 60m), .. VillageParts.List.Parts],
                    },
                ],
            },
            "load" => Asked with { Loads = [.. VillageParts.Saloon.LoadStates] },
            "wish" => Asked with { Wishes = [ChooseWish.Settling, ChooseWish.LoadLost] },
            "place" => Asked with { Open = [.. ChooseAsked.Usual, PartPlace.FrontStop] },
            _ => Asked with { Limits = new ChooseLimits { BumpLeft = new ChooseTravelLimit(0.010, 0.010) } },
        };
        var (before, after) = (Rows(Asked), Rows(more));
        // As stated, and in draws; the car as it is, and a setup of three parts.
        Assert.Equal(8, before.Count);
        foreach (var ((one, names), (other, others)) in before.Zip(after))
        {
            foreach (var (name, value) in names.Zip(one))
            {
                Assert.Equal(value, other[others.IndexOf(name)]);
            }
        }
    }

    private static List<(double[] Numbers, ImmutableArray<string> Names)> Rows(ChooseAsked asked)
    {
        var (parts, use) = (new ChooseParts(asked), new ChooseUse(asked));
        var doer = new ChooseDoer(asked, use, parts);
        long setup = 0;
        foreach (var (place, name) in new[]
        {
            (PartPlace.FrontSpring, "Alder F-19"), (PartPlace.RearSpring, "Alder R-53"), (PartPlace.RearDamper, "Bunting B at click 4"),
        })
        {
            var at = parts.Places.IndexOf(place);
            setup = parts.Space.With(setup, at, Array.FindIndex([.. parts.Space.Places[at].Options], option => option.Name == name));
        }

        ImmutableArray<string> names =
        [
            .. use.Crossings.SelectMany(one => new[] { $"{one.Name} settling", $"{one.Name} hit" }), .. use.Rides.Select(one => $"{one.Name} ride"),
        ];
        return
        [
            .. from draw in new[] { Piece.AsStated, 0, 1, 7 }
               from row in doer.Do(new Piece(PieceStage.Drive, [0L, setup], draw), CancellationToken.None)
               select (row.Numbers, names),
        ];
    }

    // The search goes by a car made linear by the chord of its dampers, both sides of a load to one side of its own.
    [Fact]
    public void By_what_the_search_goes_of_the_ride_is_what_is_told_of_it_within_two_per_cent_with_a_load_to_one_side_too()
    {
        var asked = VillageParts.Asked with { Draws = 10 };
        var answer = ChooseStudy.Run(asked, new StudyRun { Degree = 2 });
        Assert.Contains(asked.Loads, load => load.Name == "driver");
        var ride = answer.Findings.Found.Wishes.IndexOf(WishKind.Ride);
        var searched = answer.Findings.Found.Driven.ToDictionary(one => one.Setup);
        var told = answer.Findings.Trial.Tried.Skip(1).Where(one => Shortlist.IsSound(one, answer.Findings.Found.Task.Limits)).ToArray();
        Assert.NotEmpty(told);
        Assert.All(told, one => Assert.InRange(searched[one.Stated.Setup].Wishes[ride] / one.Stated.Wishes[ride], 0.98, 1.02));
    }
}

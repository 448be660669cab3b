using Microsoft.Playwright;
using static Microsoft.Playwright.Assertions;

namespace Heaveline.BrowserTests;

[Collection(AnotherProgram.Name)]
public class CarPageTests(Served served)
{
    private const string Rate = "#f-front--spring--rate";
    private const string FrontSpring = "front front/spring";

    public static TheoryData<string> Cars => [.. Directory.EnumerateFiles(Path.Combine(Checkout.Root, "examples", "garage"), "*.yaml")
        .Select(path => Path.GetFileNameWithoutExtension(path)!).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Cars))]
    public async Task Every_example_opens_with_every_part_and_its_numbers(string car)
    {
        var page = await Open($"/car?car={car}");
        var complaints = new List<string>();
        page.Console += (_, message) => complaints.AddRange(message.Type is "error" or "warning" ? [message.Text] : []);
        foreach (var part in await page.Locator("details.part").AllAsync())
        {
            if (await part.GetAttributeAsync("open") is null)
            {
                await part.Locator("summary").First.ClickAsync();
                await Expect(part).ToHaveAttributeAsync("open", "");
            }
        }

        await Expect(page.Locator("tr[data-number=ratio] td").First).ToContainTextAsync("±");
        await Expect(page.Locator("svg.scene")).ToBeVisibleAsync();
        await Expect(page.Locator("#f-front--unsprung-mass")).ToBeVisibleAsync();
        Assert.Empty(complaints);
    }

    [Fact]
    public async Task A_stiffer_spring_changes_the_numbers_and_the_step_can_be_taken_back()
    {
        using var car = new OwnCar(served);
        var page = await Open(car.Address(FrontSpring));
        var frequency = page.Locator("tr[data-number=front-frequency] td").First;
        await Expect(frequency).ToContainTextAsync("±");
        var before = await frequency.InnerTextAsync();
        await page.Locator(Rate).FillAsync("30");
        await Expect(frequency).Not.ToHaveTextAsync(before);
        await Expect(page.Locator(".keeping .state")).ToContainTextAsync("not saved");
        Assert.Equal(car.Before, car.Text);
        await page.GetByRole(AriaRole.Button, new() { Name = "Take back the last step" }).ClickAsync();
        await Expect(page.Locator(Rate)).ToHaveValueAsync("20.7");
        await Expect(frequency).ToHaveTextAsync(before, new() { UseInnerText = true });
    }

    [Fact]
    public async Task A_refused_value_is_said_beside_its_field_in_the_files_own_words_and_the_numbers_stay()
    {
        using var car = new OwnCar(served);
        var page = await Open(car.Address("body " + FrontSpring));
        var frequency = page.Locator("tr[data-number=front-frequency] td").First;
        await Expect(frequency).ToContainTextAsync("±");
        var before = await frequency.InnerTextAsync();
        await page.Locator("#f-body--centre-of-gravity-height").FillAsync("-0.5");
        var said = page.Locator("#f-body--centre-of-gravity-height-said");
        var refusals = Heaveline.Files.Cars.CarFile.Read(new Heaveline.Files.SourceText(
            "x", car.Before.Replace("centre-of-gravity-height: 0.56 m", "centre-of-gravity-height: -0.5 m", StringComparison.Ordinal))).Refusals;
        await Expect(said).ToContainTextAsync(Assert.Single(refusals).Message);
        await Expect(page.Locator("#f-body--centre-of-gravity-height")).ToHaveAttributeAsync("aria-invalid", "true");
        Assert.Contains(
            "f-body--centre-of-gravity-height-said",
            await page.Locator("#f-body--centre-of-gravity-height").GetAttributeAsync("aria-describedby") ?? "",
            StringComparison.Ordinal);
        await Expect(page.Locator(".the-numbers [role=status]")).ToContainTextAsync("last text that was a car");
        await Expect(frequency).ToHaveTextAsync(before, new() { UseInnerText = true });
        await page.Locator("#f-body--centre-of-gravity-height").FillAsync("0.6");
        await Expect(said).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task What_looks_like_a_slip_is_said_beside_its_field()
    {
        using var car = new OwnCar(served);
        var page = await Open(car.Address(FrontSpring));
        await page.Locator(Rate).FillAsync("450");
        await Expect(page.Locator(".the-form .doubtful, main > .doubtful").First).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Another_unit_keeps_the_digits_and_converts_when_asked()
    {
        using var car = new OwnCar(served);
        var page = await Open(car.Address(FrontSpring));
        var rate = page.Locator("tr[data-number=front-wheel-rate] td").First;
        await Expect(rate).ToContainTextAsync("±");
        var before = await rate.InnerTextAsync();
        await page.GetByLabel("front spring rate: unit", new() { Exact = true }).SelectOptionAsync("lbf/in");
        await Expect(page.Locator(Rate)).ToHaveValueAsync("20.7");
        await Expect(rate).Not.ToHaveTextAsync(before, new() { UseInnerText = true });
        await page.GetByRole(AriaRole.Button, new() { Name = "front spring rate: 20.7 N/mm = 118.2 lbf/in, convert" }).ClickAsync();
        await Expect(page.Locator(Rate)).ToHaveValueAsync("118.2");
        await Expect(page.Locator(".keeping .state")).ToContainTextAsync("not saved");
        await Expect(rate).ToHaveTextAsync(before, new() { UseInnerText = true });
    }

    [Fact]
    public async Task Saving_keeps_every_byte_outside_the_value_and_the_version_before()
    {
        using var car = new OwnCar(served);
        var page = await Open(car.Address(FrontSpring));
        await page.Locator(Rate).FillAsync("21.5");
        await Save(page);
        Assert.Equal(car.Before.Replace("rate: 20.7 N/mm ± 4 %", "rate: 21.5 N/mm ± 4 %", StringComparison.Ordinal), car.Text);

        await page.Locator("details.earlier > summary").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "What differs from it" }).ClickAsync();
        await Expect(page.Locator(".changes .added code")).ToContainTextAsync("21.5");
        await page.GetByRole(AriaRole.Button, new() { Name = "Bring it back: the version" }).ClickAsync();
        await Expect(page.Locator(Rate)).ToHaveValueAsync("20.7");
        Assert.Equal(car.Before, car.Text);
    }

    [Fact]
    public async Task Two_windows_on_one_file_cannot_overwrite_each_other_unknowingly()
    {
        using var car = new OwnCar(served);
        var (one, other) = (await Open(car.Address(FrontSpring)), await Open(car.Address(FrontSpring)));
        // Typed before the other saves: a window in which nothing is unsaved follows the file.
        await other.Locator(Rate).FillAsync("25");
        await Expect(other.Locator(".keeping .state")).ToContainTextAsync("not saved");
        await one.Locator(Rate).FillAsync("24");
        await Save(one);
        var first = car.Text;
        await other.Locator(".keeping button").First.ClickAsync();
        var conflict = other.Locator(".conflict");
        await Expect(conflict).ToContainTextAsync("Somebody else has saved this file meanwhile");
        await Expect(conflict.Locator(".added code").First).ToContainTextAsync("24 N/mm");
        await Expect(conflict.Locator(".added code").Last).ToContainTextAsync("25 N/mm");
        Assert.Equal(first, car.Text);
        await conflict.GetByRole(AriaRole.Button, new() { Name = "Take what is on the disk" }).ClickAsync();
        await Expect(other.Locator(Rate)).ToHaveValueAsync("24");

        await one.Locator(Rate).FillAsync("27");
        await Expect(one.Locator(".keeping .state")).ToContainTextAsync("not saved");
        await other.Locator(Rate).FillAsync("26");
        await Save(other);
        await one.Locator(".keeping button").First.ClickAsync();
        await one.GetByRole(AriaRole.Button, new() { Name = "Overwrite it with mine" }).ClickAsync();
        await Expect(one.Locator(".keeping .state")).ToContainTextAsync("Saved");
        Assert.Contains("rate: 27 N/mm", car.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Form_and_text_follow_each_other_and_what_is_no_text_of_a_car_is_said_with_its_line()
    {
        using var car = new OwnCar(served);
        var page = await Open(car.Address(FrontSpring + " text"));
        await page.Locator(Rate).FillAsync("22");
        await Expect(page.Locator("#text")).ToHaveValueAsync(car.Before.Replace("rate: 20.7 N/mm", "rate: 22 N/mm", StringComparison.Ordinal));
        await page.Locator("#text").FillAsync(car.Before.Replace("rate: 20.7 N/mm", "rate: 23 N/mm", StringComparison.Ordinal));
        await Expect(page.Locator(Rate)).ToHaveValueAsync("23");
        await page.Locator("#text").FillAsync(car.Before.Replace("wheelbase: 2.70 m ± 5 mm", "wheelbase: [2.70", StringComparison.Ordinal));
        await Expect(page.Locator("main > .refused[role=alert]")).ToContainTextAsync("line ");
        await Expect(page.Locator(".the-form")).ToContainTextAsync("The form waits");
    }

    [Fact]
    public async Task Groups_rows_and_loads_are_added_and_taken_out()
    {
        using var car = new OwnCar(served);
        var page = await Open(car.Address("car front front/damper loads loads/driver"));
        await page.GetByRole(AriaRole.Button, new() { Name = "Add a row to front damper bump" }).ClickAsync();
        await Expect(page.Locator("#f-front--damper--bump-said")).ToContainTextAsync("Refused");
        await page.GetByLabel("front damper bump, row 5, speed").FillAsync("1.5 m/s");
        await page.GetByLabel("front damper bump, row 5, force").FillAsync("800 N");
        await Expect(page.Locator("#f-front--damper--bump-said")).ToHaveCountAsync(0);
        await page.GetByRole(AriaRole.Button, new() { Name = "Take out row 5 of front damper bump" }).ClickAsync();

        await page.GetByLabel("A new load state's name").FillAsync("roof box");
        await page.GetByLabel("A new load state's name").PressAsync("Enter");
        await page.Locator("[id='f-loads--roof_32box--1']").ClickAsync();
        await page.Locator("[id='f-loads--roof_32box--1--what']").FillAsync("box");
        await page.Locator("[id='f-loads--roof_32box--1--mass']").FillAsync("40");
        await page.Locator("[id='f-loads--roof_32box--1--in']").FillAsync("driver");
        await Expect(page.Locator("[data-numbers=Standing] th.number").Last).ToHaveTextAsync("roof box");
        await page
            .GetByRole(AriaRole.Button, new() { Name = "Take out front friction" }).Or(page.Locator("[id='f-front--friction']")).First.ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Take out front friction", Exact = true }).ClickAsync();
        await Expect(page.Locator("[id='f-front--friction']")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task A_variant_says_what_it_changes_and_gives_it_back()
    {
        using var car = new OwnCar(served, "fern-saloon-cured");
        var page = await Open(car.Address(FrontSpring));
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("what is changed");
        await Expect(page.Locator("details[data-part=front]")).ToContainTextAsync("20.7 N/mm ± 4 % in fern-saloon.yaml");
        await page.GetByRole(AriaRole.Button, new() { Name = "front spring rate: as in the base" }).ClickAsync();
        await Expect(page.Locator(Rate)).ToHaveValueAsync("20.7");
        await Save(page);
        Assert.DoesNotContain("18.5", car.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Changes_are_kept_as_a_variant_and_the_car_stays_as_it_is()
    {
        using var car = new OwnCar(served);
        var page = await Open(car.Address(FrontSpring));
        await page.Locator(Rate).FillAsync("19");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the changes as a variant" }).ClickAsync();
        await page.GetByLabel("What the variant is called").FillAsync("softer front");
        await Expect(page.GetByLabel("Its file")).ToHaveValueAsync($"{car.Name}-softer-front.yaml");
        await page.GetByLabel("Its file").FillAsync("../outside.yaml");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save the variant" }).ClickAsync();
        await Expect(page.Locator("#new-file-said")).ToContainTextAsync("must be a name inside the garage");
        await page.GetByLabel("Its file").FillAsync($"{car.Name}-softer-front.yaml");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save the variant" }).ClickAsync();
        await Assertions.Expect(page).ToHaveURLAsync(new System.Text.RegularExpressions.Regex($"/car[?]car={car.Name}-softer-front(&|$)"));
        await Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("softer front: what is changed");
        Assert.Equal(car.Before, car.Text);
    }

    [Fact]
    public async Task Nobody_leaves_unsaved_changes_without_being_asked()
    {
        using var car = new OwnCar(served);
        var page = await Open(car.Address(FrontSpring));
        await page.Locator(Rate).FillAsync("22");
        await Expect(page.Locator(".keeping .state")).ToContainTextAsync("not saved");
        await page.GetByRole(AriaRole.Link, new() { Name = "The pass" }).ClickAsync();
        await Expect(page.GetByRole(AriaRole.Alertdialog)).ToBeVisibleAsync();
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Stay here" })).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.GetByRole(AriaRole.Alertdialog)).ToHaveCountAsync(0);
        await Expect(page.Locator(Rate)).ToHaveValueAsync("22");
        await page.GetByRole(AriaRole.Link, new() { Name = "The pass" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Save, then go" }).ClickAsync();
        await Assertions.Expect(page).ToHaveURLAsync(new System.Text.RegularExpressions.Regex("/pass"));
        Assert.Contains("rate: 22 N/mm", car.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_browser_too_asks_before_unsaved_changes_are_lost()
    {
        using var car = new OwnCar(served);
        var page = await Open(car.Address(FrontSpring));
        var asked = new List<string>();
        page.Dialog += async (_, dialog) =>
        {
            asked.Add(dialog.Type);
            await dialog.AcceptAsync();
        };
        await page.ReloadAsync();
        Assert.Empty(asked);
        await Expect(page.Locator("[data-live=yes]")).ToBeAttachedAsync();
        await page.Locator(Rate).ClickAsync();
        await page.Keyboard.TypeAsync("1");
        await Expect(page.Locator(".keeping .state")).ToContainTextAsync("not saved");
        // The browser is told to ask in a message of its own, after the one that shows the state.
        await page.WaitForTimeoutAsync(300);
        await page.ReloadAsync();
        Assert.Equal(["beforeunload"], asked);
    }

    [Fact]
    public async Task The_open_parts_stand_in_the_address_and_a_reload_opens_them()
    {
        var page = await Open("/car?car=fern-saloon");
        await page.Locator("details[data-part=rear] > summary").ClickAsync();
        await page.Locator("#f-rear--spring").ClickAsync();
        await Expect(page.Locator("#f-rear--spring--rate")).ToBeVisibleAsync();
        await Assertions.Expect(page).ToHaveURLAsync(new System.Text.RegularExpressions.Regex("rear"));
        await page.ReloadAsync();
        await Expect(page.Locator("#f-rear--spring--rate")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Everything_works_by_keyboard_alone()
    {
        using var car = new OwnCar(served);
        var page = await Open(car.Address());
        await Keys.TabTo(page, "details[data-part=front] > summary");
        await page.Keyboard.PressAsync("Enter");
        await Keys.TabTo(page, "#f-front--spring");
        await page.Keyboard.PressAsync("Space");
        await Keys.TabTo(page, Rate);
        await page.Keyboard.PressAsync("Control+A");
        await page.Keyboard.TypeAsync("26.5");
        await Expect(page.Locator(".keeping .state")).ToContainTextAsync("not saved");
        await Keys.TabTo(page, ".keeping button", "Shift+Tab");
        await page.Keyboard.PressAsync("Enter");
        await Expect(page.Locator(".keeping .state")).ToContainTextAsync("Saved");
        Assert.Contains("rate: 26.5 N/mm ± 4 %", car.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_can_be_taken_away_arrives()
    {
        foreach (var (what, type, start) in new[]
        {
            ("car.yaml", "application/yaml", "# A family saloon"),
            ("car-loads.svg", "image/svg+xml", "<"),
            ("car-loads.png", "image/png", "\u2030PNG"),
            ("car-loads.pdf", "application/pdf", "%PDF"),
            ("car-numbers.csv", "text/csv", "part,key"),
            ("car-numbers.json", "application/json", "{"),
        })
        {
            using var client = new HttpClient { BaseAddress = served.Address };
            var answer = await client.GetAsync($"/download/{what}?car=fern-saloon", TestContext.Current.CancellationToken);
            Assert.Equal(type, answer.Content.Headers.ContentType!.MediaType);
            var bytes = await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken);
            Assert.True(bytes.Length > 100, what);
            Assert.Equal(
                start is "\u2030PNG" ? [0x89, (byte)'P'] : System.Text.Encoding.UTF8.GetBytes(start)[..1], bytes[..(start is "\u2030PNG" ? 2 : 1)]);
            Assert.Equal(
                System.Net.HttpStatusCode.NotFound,
                (await client.GetAsync($"/download/{what}?car=..%2Ffern-saloon", TestContext.Current.CancellationToken)).StatusCode);
        }
    }

    [Theory]
    [InlineData("/car?car=nowhere", "There is no car \"nowhere\"")]
    [InlineData("/car?car=..%2F..%2Fetc%2Fpasswd", "There is no car")]
    [InlineData("/car", "Choose one of the garage")]
    public async Task An_address_without_a_car_says_so_and_lists_those_that_are_here(string address, string words)
    {
        var page = await served.Open(address);
        await Expect(page.Locator("main")).ToContainTextAsync(words);
        await Expect(page.Locator("main").GetByRole(AriaRole.Link, new() { Name = "Fern saloon", Exact = true })).ToBeVisibleAsync();
        await Expect(page.GetByText("fern-saloon", new() { Exact = true })).ToBeVisibleAsync();
    }

    private static async Task Save(IPage page)
    {
        await Expect(page.Locator(".keeping .state")).ToContainTextAsync("not saved");
        await page.Locator(".keeping button").First.ClickAsync();
        await Expect(page.Locator(".keeping .state")).ToContainTextAsync("Saved");
    }

    private async Task<IPage> Open(string path, int width = 1280, bool dark = false)
    {
        var page = await served.Open(path, width, 900, dark);
        await Expect(page.Locator("[data-live=yes]")).ToBeAttachedAsync(new() { Timeout = 20000 });
        return page;
    }
}

"""The board in a browser: each touch of each kind, by mouse and by keys, saved with a mistake and mended, on a phone.

One browser serves all tests of this file. It is Debian's, `apt-get install chromium`; without it they are skipped.
"""

import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest
from accessible import complaints
from playwright.sync_api import Browser, Page, Route
from serving import served
from touched import EVERY_KIND, HOUSE, states_of, touch

import plumbnet
from plumbnet.boards import answer_table
from plumbnet.boards.live.board_server import BoardServer
from plumbnet.boards.live.followed_file import FollowedFile
from plumbnet.boards.one_board import OneBoard
from plumbnet.boards.page_files import page_script
from plumbnet.boards.state_answer import board_answer
from plumbnet.study.touching.state_choice import held_states
from plumbnet.study.touching.touch_code import Touch, code_of
from plumbnet.study.touching.touch_states import TouchStates

PROJECTOR = {"width": 1280, "height": 720}
PHONE = {"width": 390, "height": 844}
TITLE = "</h1></script><script>document.title=1</script>{{data}} <img src=x onerror=alert(1)>"
HOSTILE = HOUSE.replace("A house on Mill Lane (invented)", TITLE)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    file = tmp_path / "house.yaml"
    file.write_text(HOUSE, encoding="utf-8")
    return file


@cache
def board_of(text: bytes) -> OneBoard:
    """The board of a layout, made once for all tests: it holds no state of those that ask it."""
    return OneBoard(plumbnet.check(plumbnet.read_bytes(text, file="house.yaml")))


@pytest.fixture
def server(path: Path) -> Iterator[BoardServer]:
    with served(FollowedFile(path, lambda: board_of(path.read_bytes()))) as running:
        yield running


@pytest.fixture
def page(browser: Browser, server: BoardServer) -> Iterator[Page]:
    yield from opened(browser, server.address, PROJECTOR)


def opened(browser: Browser, address: str, size: dict[str, int]) -> Iterator[Page]:
    """A page on an address, which must not complain of anything."""
    context = browser.new_context(viewport={"width": size["width"], "height": size["height"]}, reduced_motion="reduce")
    page = context.new_page()
    complaints: list[str] = []
    page.on("console", lambda message: complaints.append(message.text))
    page.on("pageerror", lambda error: complaints.append(str(error)))
    page.goto(address)
    page.wait_for_selector("body[data-ready]")
    yield page
    context.close()
    # The browser's own word on an answer that is refused or fails is no complaint of the page.
    assert [one for one in complaints if not re.search("status of (422|500)", one)] == []


def shown(page: Page, *touched: Touch) -> None:
    """Wait until a state is shown."""
    page.wait_for_selector(f'body[data-shown="{code_of(touched) or "drawn"}"]')


def part(name: str) -> str:
    return f'g.part[role=button][aria-label^="{name}"]'


def verdict(page: Page) -> str:
    return page.inner_text("#verdict").lower()


def placed(page: Page) -> dict[str, str]:
    """Where every part stands, in the picture's own measure."""
    found = page.evaluate(
        "[...document.querySelectorAll('g.part')].map(p => [p.dataset.part, p.dataset.x + ' ' + p.dataset.y])"
    )
    return dict(found)


def stops(page: Page) -> list[str]:
    labels = page.evaluate("[...document.querySelectorAll('g.part.stops')].map(p => p.getAttribute('aria-label'))")
    return sorted(re.split(r"[,: ]", label)[0] for label in labels)


def test_valve_turns_at_a_click_the_answer_stands_and_nothing_moves(page: Page) -> None:
    before = placed(page)
    assert verdict(page) == "controlled"
    page.click(part("tank-stop"))
    page.click("#menu button:has-text('shut')")
    page.wait_for_selector(f"{part('tank-stop')} .variant[data-symbol=shut_valve]:not(.hidden)")
    assert verdict(page) == "trapped"
    assert "tank-stop cuts tank off" in page.inner_text("#sentence")
    assert stops(page) == ["meter"]
    assert page.is_visible(f"{part('tank, ')} .cutoff-mark")
    assert page.locator(".zone .fill").get_attribute("d")
    assert page.get_attribute(".zone", "class") == "zone v-trapped"
    assert placed(page) == before
    assert "relief" in (page.text_content("#column") or "")


def test_undo_redo_as_drawn_and_an_address_that_can_be_sent(page: Page) -> None:
    assert page.is_disabled("#undo")
    page.click(part("meter"))
    page.click("#menu button:has-text('without a check')")
    page.wait_for_selector("#verdict:text-is('OPEN')")
    address = page.url
    page.click(part("stop"))
    page.click("#menu button:text-is('shut')")
    page.wait_for_selector("#verdict:not(:text-is('OPEN'))")
    page.click("#undo")
    page.wait_for_selector("#verdict:text-is('OPEN')")
    page.click("#redo")
    page.wait_for_selector("#verdict:not(:text-is('OPEN'))")
    page.click("#drawn")
    shown(page)
    assert page.is_disabled("#drawn")
    page.goto(address)
    page.wait_for_selector("#verdict:text-is('OPEN')")
    other = re.sub(r"#\w+:", "#0123456789ab:", address)
    page.goto("about:blank")
    page.goto(other)
    page.wait_for_selector("body[data-ready]")
    assert "another version of the file" in page.inner_text("#touched")
    assert verdict(page) == "controlled"


def test_part_is_put_into_a_pipe_all_move_over_and_it_can_be_taken_back(page: Page) -> None:
    before = placed(page)
    page.locator('g.pipe-hit[aria-label^="pipe from split to heater:"]').focus()
    page.keyboard.press("Enter")
    page.click("#menu button:text-is('a check valve')")
    page.wait_for_selector(part("split-check"))
    assert verdict(page) == "trapped"
    assert placed(page) != before
    page.click("#touched button")
    shown(page)
    assert placed(page) == before


def test_number_is_typed_and_moved_by_arrows_in_one_step_of_undoing(page: Page) -> None:
    page.click(part("street"))
    page.fill("#menu input", "78")
    page.keyboard.press("Enter")
    page.wait_for_selector("#column text:has-text('78')")
    for _ in range(3):
        page.keyboard.press("ArrowUp")
    page.wait_for_selector("#touched:has-text('81')", state="attached")
    page.keyboard.press("Escape")
    page.click("#undo")
    shown(page)


def test_fault_is_named_and_marked_and_no_cure(page: Page, path: Path) -> None:
    path.write_text(HOUSE.replace("tank: {kind", "tank: {state: waterlogged, kind"), encoding="utf-8")
    page.wait_for_selector("#verdict:text-is('TRAPPED')")
    page.click(part("meter"))
    page.click("#menu button.fault")
    page.wait_for_selector("#verdict:text-is('OPEN')")
    assert "a fault is no cure" in page.inner_text("#sentence")
    assert "(a fault)" in page.inner_text("#touched")
    assert page.is_visible(f"{part('meter')} .fault-mark")


def test_file_saved_with_a_mistake_and_mended(page: Page, path: Path) -> None:
    page.click(part("tank-stop"))
    page.click("#menu button:has-text('shut')")
    page.wait_for_selector("#verdict:text-is('TRAPPED')")
    path.write_text(HOUSE.replace("stop: valve", "stop: vlave", 1), encoding="utf-8")
    page.wait_for_selector("#mistake:not([hidden])")
    assert 'unknown kind "vlave": did you mean "valve"?' in page.inner_text("#mistake")
    assert "^" in page.inner_text("#mistake")
    assert verdict(page) == "trapped"
    path.write_text(HOUSE.replace("62 psi", "64 psi"), encoding="utf-8")
    page.wait_for_selector("#mistake", state="hidden")
    page.wait_for_selector("#column text:has-text('64')")
    assert verdict(page) == "trapped"
    assert "tank-stop: shut" in page.inner_text("#touched")


def test_of_ten_quick_clicks_the_last_one_wins(page: Page) -> None:
    states = states_of(HOUSE)
    words = ["shut", "locked"] * 5
    script = """([name, words]) => {
      for (const word of words) {
        document.querySelector(`g.part[aria-label^="${name}"]`).dispatchEvent(new MouseEvent("click", {bubbles: true}));
        [...document.querySelectorAll("#menu button")].find((each) => each.textContent === word).click();
      }
    }"""
    page.evaluate(script, ["tank-stop", words])
    shown(page, touch(states, "tank-stop", "locked"))
    assert verdict(page) == "controlled"
    page.evaluate(script, ["tank-stop", words[:9]])
    shown(page, touch(states, "tank-stop", "shut"))
    assert verdict(page) == "trapped"


def test_by_keyboard_alone_the_water_is_followed_a_valve_turned_and_undone(page: Page) -> None:
    met = []
    for _ in range(6):
        page.keyboard.press("Tab")
        label = page.evaluate("document.activeElement.getAttribute('aria-label')") or ""
        met.append(re.split(r"[,: ]", label)[0])
    assert met == ["street", "stop", "meter", "tank-stop", "tank", "heater"]
    for _ in range(2):
        page.keyboard.press("Shift+Tab")
    page.keyboard.press("Enter")
    assert page.evaluate("document.activeElement.textContent") == "open"
    page.keyboard.press("ArrowDown")
    page.keyboard.press("Enter")
    page.wait_for_selector("#spoken:has-text('TRAPPED')", state="attached")
    assert "tank-stop: shut" in page.inner_text("#spoken")
    assert page.evaluate("document.activeElement.getAttribute('aria-label')").startswith("tank-stop, valve: shut")
    page.keyboard.press("Control+z")
    shown(page)
    page.keyboard.press("Enter")
    page.keyboard.press("Escape")
    assert page.is_hidden("#menu")


def test_tree_that_a_screen_reader_reads_names_parts_states_and_the_answer(page: Page) -> None:
    tree = page.locator("body").aria_snapshot()
    assert 'button "meter, meter: with a check, stops the water"' in tree
    assert 'button "heater CONTROLLED, storage heater: in service"' in tree
    assert 'button "pipe from split to heater: nothing in it"' in tree
    assert re.search(r'img "Cold 62, limit 80, when all is hot 77.5 psi"', tree)
    assert "CONTROLLED" in tree


def test_scenario_is_copied_as_a_file_holds_it(page: Page) -> None:
    page.click(part("tank-stop"))
    page.click("#menu button:has-text('shut')")
    page.wait_for_selector("#verdict:text-is('TRAPPED')")
    page.click("#copy")
    page.wait_for_selector("#walk:not([hidden])")
    read = plumbnet.read_bytes((HOUSE + page.inner_text("#hops")).encode())
    assert plumbnet.check(read.with_changes(read.changes_of("touched-on-the-board"))).heaters[0].verdict == "trapped"


def test_whole_walk_is_told_on_request(page: Page) -> None:
    page.click("#whole")
    page.wait_for_selector("#hops:has-text('What the growing water tries')", state="attached")
    page.click("#whole")
    assert page.is_hidden("#walk")


def test_phone_shows_all_without_sideways_scrolling_and_its_list_answers_to_a_finger(
    browser: Browser, server: BoardServer
) -> None:
    for page in opened(browser, server.address, PHONE):
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
        page.click("#list button:has-text('tank-stop')")
        page.click("#menu button:has-text('shut')")
        page.wait_for_selector("#verdict:text-is('TRAPPED')")
        buttons = "[...document.querySelectorAll('#list button, nav button')].filter(each => each.offsetHeight)"
        boxes = page.evaluate(f"{buttons}.map(each => each.offsetHeight)")
        assert min(boxes) >= 44


def test_double_text_on_a_projector_needs_no_sideways_scrolling(browser: Browser, server: BoardServer) -> None:
    for page in opened(browser, server.address, {"width": 640, "height": 360}):
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_dark_light_and_black_on_white_in_print(page: Page) -> None:
    ground = "getComputedStyle(document.body).backgroundColor"
    assert page.evaluate(ground) == "rgb(255, 255, 255)"
    page.click("#theme")
    assert page.evaluate(ground) == "rgb(20, 24, 29)"
    page.emulate_media(media="print")
    assert page.evaluate(ground) == "rgb(255, 255, 255)"
    assert page.evaluate("getComputedStyle(document.querySelector('.pipe.hot')).stroke") == "rgb(0, 0, 0)"
    assert page.is_hidden("nav")


def test_lettering_is_as_large_as_a_projector_wants(page: Page) -> None:
    assert page.evaluate("getComputedStyle(document.getElementById('sentence')).fontSize") == "28px"
    assert page.evaluate("document.querySelector('.name').getBoundingClientRect().height") >= 18
    assert page.evaluate("document.getElementById('sentence').getClientRects().length") <= 2


def test_hostile_title_is_text(browser: Browser, path: Path) -> None:
    path.write_text(HOSTILE, encoding="utf-8")
    with served(FollowedFile(path, lambda: OneBoard(plumbnet.check(path)))) as running:
        for page in opened(browser, running.address, PROJECTOR):
            assert page.inner_text("h1").startswith("</h1></script><script>document.title=1</script>{{data}}")
            assert page.title().startswith("</h1>")
            assert page.locator("img").count() == 0


def heaters_shown(page: Page) -> dict[str, str]:
    """The verdict below each heater that has one."""
    script = """[...document.querySelectorAll('g.part text.verdict')].map(word =>
        [word.closest('g.part').getAttribute('aria-label').split(' ')[0], word.textContent.toLowerCase()])"""
    return {name: word for name, word in page.evaluate(script) if word}


def every_touch(states: TouchStates) -> Iterator[Touch]:
    """Every option of every kind once, and each of what can be put into a pipe."""
    met: set[tuple[str, str]] = set()
    for at, one in enumerate(states.touchables):
        for number, option in enumerate(one.options):
            if (one.kind, option.words.partition(",")[0]) not in met:
                met.add((one.kind, option.words.partition(",")[0]))
                yield Touch(at, number)


def test_each_touch_of_each_kind_shows_what_the_engine_says(browser: Browser) -> None:
    followed = FollowedFile(None, lambda: OneBoard(plumbnet.check(EVERY_KIND.encode())))
    states, board = followed.shown.states, followed.shown
    with served(followed) as running:
        for page in opened(browser, running.address, PROJECTOR):
            for one in every_touch(states):
                code = code_of([one])
                page.evaluate(f"location.hash = '#{states.digest}:{code}'")
                shown(page, one)
                answer = board.answer(code)
                wanted = {heater["name"]: heater["verdict"] for heater in answer["heaters"]}
                assert heaters_shown(page) == wanted, states.in_words(one)


def test_answers_on_the_page_are_those_of_the_engine_over_a_table_of_states(page: Page) -> None:
    states = states_of(HOUSE)
    parts = [at for at, one in enumerate(states.touchables) if one.pipe is None and one.options]
    table = [(Touch(a, 0), Touch(b, 0)) for a in parts for b in parts if a < b]
    for state in table:
        page.evaluate(f"location.hash = '#{states.digest}:{code_of(state)}'")
        shown(page, *state)
        (heater,) = board_answer(states, state)["heaters"]
        sentence = heater["sentence"] + (" A fault keeps it so, and a fault is no cure." if heater["by_fault"] else "")
        assert (verdict(page), page.inner_text("#sentence"), stops(page)) == (
            heater["verdict"],
            sentence,
            heater["stops"],
        )
    assert len(table) > 20


def copied(browser: Browser, folder: Path, layout: str, *names: str, packed: bool = False) -> Iterator[Page]:
    """A copy opened from a file, the network off."""
    states = states_of(layout)
    with pytest.MonkeyPatch.context() as patch:
        if packed:
            patch.setattr(answer_table, "PLAIN_BYTES", 1_000)
        content = answer_table.board_copy(states, held_states(states, names))
    file = folder / "lesson.html"
    file.write_text(content, encoding="utf-8")
    context = browser.new_context(viewport={"width": 1280, "height": 720}, offline=True, reduced_motion="reduce")
    page = context.new_page()
    complaints: list[str] = []
    page.on("console", lambda message: complaints.append(message.text))
    page.on("pageerror", lambda error: complaints.append(str(error)))
    page.on("request", lambda request: complaints.append(request.url) if not request.url.startswith("file:") else None)
    page.goto(file.as_uri())
    page.wait_for_selector("body[data-ready]")
    yield page
    context.close()
    assert complaints == []


@pytest.mark.parametrize("packed", [False, True])
def test_copy_from_a_file_with_the_network_off_gives_the_engines_answers(
    browser: Browser, tmp_path: Path, *, packed: bool
) -> None:
    states = states_of(HOUSE)
    names = ("tank-stop", "meter") if packed else ("tank-stop", "meter", "tank")
    for page in copied(browser, tmp_path, HOUSE, *names, packed=packed):
        for state in held_states(states, names):
            page.evaluate(f"location.hash = '#{states.digest}:{code_of(state)}'" if state else "location.hash = ''")
            shown(page, *state)
            (heater,) = board_answer(states, state)["heaters"]
            assert (verdict(page), stops(page)) == (heater["verdict"], heater["stops"])
            assert page.inner_text("#sentence").startswith(heater["sentence"])


def test_copy_is_touched_undone_and_says_what_it_does_not_hold(browser: Browser, tmp_path: Path) -> None:
    states = states_of(HOUSE)
    for page in copied(browser, tmp_path, HOUSE, "tank-stop", "split to heater"):
        page.click(part("tank-stop"))
        page.click("#menu button:text-is('shut')")
        page.wait_for_selector("#verdict:text-is('TRAPPED')")
        assert page.locator(part("meter")).count() == 0
        page.locator("g.pipe-hit").first.focus()
        page.keyboard.press("Enter")
        page.click("#menu button:has-text('a tank of')")
        page.wait_for_selector(f"{part('split-tank')}")
        page.click("#undo")
        page.click("#undo")
        shown(page)
        assert page.is_hidden("#whole")
        meter = touch(states, "meter", "check stuck open")
        page.evaluate(f"location.hash = '#{states.digest}:{code_of([meter])}'")
        shown(page, meter)
        assert "not in this copy" in page.inner_text("#sentence")
        assert "never plug, cap or remove one" in page.inner_text("footer")


def test_hostile_title_is_text_in_a_copy(browser: Browser, tmp_path: Path) -> None:
    for page in copied(browser, tmp_path, HOSTILE, "stop"):
        assert page.inner_text("h1").startswith(TITLE.split("{{", maxsplit=1)[0])
        assert page.locator("img").count() == 0


def test_heat_up_is_shown_event_by_event_to_those_who_want_nothing_to_move(page: Page) -> None:
    page.click(part("tank-stop"))
    page.click("#menu button:has-text('shut')")
    page.wait_for_selector("#verdict:text-is('TRAPPED')")
    page.click("#heat")
    page.wait_for_selector("#moment-words:has-text('pushes wherever it can')")
    frames = [page.inner_text("#moment-words")]
    while page.inner_text("#play") != "Again":
        page.click("#next-event")
        frames.append(page.inner_text("#moment-words"))
    assert "heater/relief opens at 150 psi" in " ".join(frames)
    assert "gal let out" in frames[-1]
    assert 3 <= len(frames) <= 12
    assert "now" in (page.text_content("#column") or "")
    page.click("#undo")
    shown(page)
    assert not page.is_visible("#heating")
    assert "now" not in (page.text_content("#column") or "")


def test_heat_up_asked_before_another_heater_was_chosen_is_not_shown(browser: Browser) -> None:
    annex = "{kind: storage_heater, volume: 40 gal, setpoint: 120 degF, relief: {pressure: 150 psi}}"
    twins = HOUSE.replace("runs:", f"  annex: {annex}\n  basin: fixture\nruns:\n  - split -> annex -> basin.hot")
    held: list[Route] = []
    with served(FollowedFile(None, lambda: OneBoard(plumbnet.check(twins.encode())))) as server:
        for page in opened(browser, server.address, PROJECTOR):
            page.route("**/heat-up.json?*heater=heater", lambda route: held.append(route))  # noqa: PLW0108  it wants a function
            assert page.inner_text("#whose") == "heater, psi"
            with page.expect_request("**/heat-up.json*"):
                page.click("#heat")
            page.click(part("annex "))
            page.click("#menu button:has-text('show this heater')")
            with page.expect_response("**/heat-up.json*"):
                held[0].continue_()
            page.evaluate("fetch('board.css').then((reply) => reply.text())")
            assert page.is_hidden("#heating")
            assert page.inner_text("#whose") == "annex, psi"
            page.click("#heat")
            page.wait_for_selector("#heating:not([hidden])")


def test_question_that_nothing_answers_is_told_calmly(page: Page) -> None:
    for path in ("walk", "heat-up"):
        page.route(f"**/{path}.json*", lambda route: route.fulfill(status=500, body="{}"))
    page.click("#heat")
    page.wait_for_selector("#moment-words:has-text('The board does not answer.')")
    page.click("#whole")
    page.wait_for_selector("#hops:has-text('The board does not answer.')")


def test_heat_up_plays_in_twenty_seconds_and_can_be_halted_and_moved(browser: Browser, server: BoardServer) -> None:
    page = browser.new_page(viewport={"width": 1280, "height": 720})
    page.clock.install()
    page.goto(server.address)
    page.wait_for_selector("body[data-ready]")
    page.click("#heat")
    page.wait_for_selector("#play:text-is('Pause')")
    assert page.locator("svg.rushing").count() == 1
    page.clock.fast_forward(4000)
    page.wait_for_selector("svg.rushing", state="detached")
    assert 100 < float(page.input_value("#moment")) < 400
    page.click("#play")
    held = page.input_value("#moment")
    page.clock.run_for(1000)
    assert page.input_value("#moment") == held
    page.click("#play")
    page.clock.fast_forward(20000)
    page.wait_for_selector("#play:text-is('Again')")
    assert page.input_value("#moment") == "1000"
    assert page.inner_text("#play") == "Again"
    page.evaluate("$ = document.getElementById('moment'); $.value = 500; $.dispatchEvent(new Event('input'))")
    assert page.inner_text("#play") == "Play"
    page.close()


def test_nothing_serious_stands_in_the_way_of_those_who_see_little_or_use_no_mouse(
    browser: Browser, server: BoardServer
) -> None:
    for size in (PROJECTOR, PHONE):
        page = browser.new_page(viewport={"width": size["width"], "height": size["height"]}, reduced_motion="reduce")
        page.emulate_media(color_scheme="dark" if size is PHONE else "light")
        page.goto(server.address)
        page.wait_for_selector("body[data-ready]")
        page.click(part("tank-stop"))
        if size is PHONE:
            page.click("#menu button:has-text('shut')")
            page.wait_for_selector("#verdict:text-is('TRAPPED')")
        assert complaints(page) == []
        page.close()


NOTEBOOK = """async ([source, page]) => {
  const url = URL.createObjectURL(new Blob([source], {type: "text/javascript"}));
  const {render} = (await import(url)).default, told = [];
  const model = {
    get: (name) => ({page, height: 640})[name],
    on: (_, tell) => told.push(tell),
    off: () => {},
    send: async (asked) => { const answer = await window.asked(asked); for (const tell of told) tell(answer); },
  };
  for (const cell of document.querySelectorAll("div")) render({model, el: cell});
}"""
"""What a notebook does with the script of a widget, in two cells that show the same one."""


def test_board_in_a_notebook_answers_undoes_and_tells_the_kernel(browser: Browser) -> None:
    widget = plumbnet.board(plumbnet.read_bytes(HOUSE.encode()))
    page = browser.new_page(viewport={"width": 1000, "height": 1400}, reduced_motion="reduce")
    complaints: list[str] = []
    page.on("pageerror", lambda error: complaints.append(str(error)))
    page.expose_function("asked", widget.asked.reply)
    page.set_content("<div></div><div></div>")
    page.evaluate(NOTEBOOK, [page_script("notebook.mjs"), widget.page])
    first, second = (page.frame_locator("iframe").nth(number) for number in range(2))
    for frame in (first, second):
        frame.locator("body[data-ready]").wait_for()
    first.locator(part("tank-stop")).click()
    first.locator("#menu button:has-text('shut')").click()
    first.locator("#verdict:text-is('TRAPPED')").wait_for()
    assert [heater.verdict.value for heater in widget.report.heaters] == ["trapped"]
    assert second.locator("#verdict").inner_text() == "CONTROLLED"
    first.locator("#undo").click()
    first.locator("#verdict:text-is('CONTROLLED')").wait_for()
    assert widget.asked.state == ""
    first.locator("#redo").click()
    first.locator("#verdict:text-is('TRAPPED')").wait_for()
    first.locator("#whole").click()
    first.locator("#hops:has-text('heater')").wait_for()
    page.close()
    assert complaints == []

"""A bare window on WebKitGTK for WebKitWebDriver to drive, with storage of its own that outlives its pages.

The browser that comes with the engine keeps nothing and logs nothing while it is driven.
Arguments: width, height, "light" or "dark", a folder for all it writes, a script to run before each
page's own, and the engine's features to switch on ("+Name") or off ("-Name"). What the script posts
to "fault" becomes a line of the file "faults" in the folder.
"""

import sys

import gi

gi.require_version("Gtk", "3.0")
gi.require_version("WebKit2", "4.1")
from gi.repository import Gtk, WebKit2

width, height, scheme, folder, script, *switches = sys.argv[1:]

Gtk.Settings.get_default().props.gtk_application_prefer_dark_theme = scheme == "dark"
settings = WebKit2.Settings()
features = WebKit2.Settings.get_all_features()
for feature in (features.get(i) for i in range(features.get_length())):
    name = feature.get_identifier()
    if f"-{name}" in switches or f"+{name}" in switches:
        settings.set_feature_enabled(feature, f"+{name}" in switches)

data = WebKit2.WebsiteDataManager(
    base_data_directory=f"{folder}/data", base_cache_directory=f"{folder}/cache"
)
context = WebKit2.WebContext(website_data_manager=data)
context.set_automation_allowed(True)

scripts = WebKit2.UserContentManager()
scripts.register_script_message_handler("fault")
scripts.add_script(
    WebKit2.UserScript(
        script,
        WebKit2.UserContentInjectedFrames.ALL_FRAMES,
        WebKit2.UserScriptInjectionTime.START,
        None,
        None,
    )
)


def note(_scripts, message):
    with open(f"{folder}/faults", "a", encoding="utf-8") as faults:
        faults.write(message.get_js_value().to_string().replace("\n", " ") + "\n")


def open_window(_session):
    view = WebKit2.WebView(
        web_context=context,
        settings=settings,
        user_content_manager=scripts,
        is_controlled_by_automation=True,
    )
    window = Gtk.Window(default_width=int(width), default_height=int(height), decorated=False)
    window.add(view)
    view.connect("close", lambda _view: window.destroy())
    window.show_all()
    return view


def begin(_context, session):
    information = WebKit2.ApplicationInfo()
    information.set_name("WebKitGTK")
    information.set_version(WebKit2.get_major_version(), WebKit2.get_minor_version(), 0)
    session.set_application_info(information)
    session.connect("create-web-view", open_window)


def save(_context, download):
    download.connect(
        "decide-destination",
        lambda one, name: one.set_destination(f"file://{folder}/downloads/{name}"),
    )


scripts.connect("script-message-received::fault", note)
context.connect("automation-started", begin)
context.connect("download-started", save)
Gtk.main()
